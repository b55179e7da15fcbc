/** A server that answers nothing: what every server in TypeScript pays for Node, the protocol and the text. */
import {
  createConnection,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
connection.onInitialize(() => ({ capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } }));
documents.onDidChangeContent(({ document: { uri, version } }) =>
  connection.sendDiagnostics({ uri, version, diagnostics: [] }),
);
documents.listen(connection);
connection.listen();
