/**
 * A server that answers nothing: what every server in TypeScript pays for Node, the protocol and the text. What it is given to
 * keep it sends when asked, so that the price of sending an answer is known.
 */
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
let kept = null;
connection.onNotification("bench/keep", ({ answer }) => {
  kept = answer;
});
connection.onRequest("bench/send", () => kept);
documents.listen(connection);
connection.listen();
