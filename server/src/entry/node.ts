/** The language server as a program of its own: what the editor extension starts, bundled into `server.cjs`. */
import { serve } from "./serve.ts";

serve();
