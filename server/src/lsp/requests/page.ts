/** `finishwright/page`, a request of our own: a page on rules in the language of the client. */
import { pageInLanguage } from "../../features/page-in-language.ts";
import type { PageParams } from "../custom-requests.ts";

export const page = ({ text }: PageParams): string => pageInLanguage(text);
