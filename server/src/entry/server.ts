/** What the editor extension starts, bundled into `server.cjs`: the language server as a program of its own. */
import { loadBeside } from "./compile-cache.ts";

loadBeside("./language-server.cjs");
