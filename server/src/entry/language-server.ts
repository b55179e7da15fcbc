/** The language server itself, bundled into `language-server.cjs`, which `server.cjs` loads. */
import { serve } from "./serve.ts";

serve();
