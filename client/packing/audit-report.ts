/** The answer of `npm audit --json`, read for the packages that are bundled. */
import { z } from "zod";

const answerSchema = z.object({
  vulnerabilities: z.record(
    z.string(),
    z.object({
      severity: z.string(),
      range: z.string(),
      via: z.array(
        z.union([z.string(), z.object({ title: z.string().optional(), url: z.string().optional() })]),
      ),
    }),
  ),
});

export interface AuditReport {
  readonly lines: readonly string[];
  readonly status: 0 | 1 | 2;
}

export function readAudit(stdout: string, stderr: string, bundled: ReadonlySet<string>): AuditReport {
  const answer = answerSchema.safeParse(parsed(stdout));
  if (!answer.success) {
    const reason = reasonIn(parsed(stdout)) ?? (stderr.trim().split("\n")[0] || "no answer");
    return {
      lines: [
        `Nothing is known: the registry did not answer the question for weak spots (${reason}).`,
        "Ask again with a connection to a registry that answers `npm audit`; some mirrors do not.",
      ],
      status: 2,
    };
  }
  const found = Object.entries(answer.data.vulnerabilities);
  const own = found.filter(([name]) => bundled.has(name));
  const tools = found.length - own.length;
  const lines = own.flatMap(([name, { severity, range, via }]) => [
    `${severity} in ${name} ${range}`,
    ...via.flatMap((each) =>
      typeof each === "string" ? [] : [`  ${each.title ?? ""} ${each.url ?? ""}`.trimEnd()],
    ),
  ]);
  return {
    lines: [
      ...lines,
      `${own.length} of ${bundled.size} bundled packages have known weak spots; ${tools} of the tools, which reach nobody.`,
    ],
    status: own.length > 0 ? 1 : 0,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** npm tells what went wrong as `message`, or as `error.summary`. */
function reasonIn(answer: unknown): string | undefined {
  const { message, error } = Object(answer) as { readonly message?: unknown; readonly error?: unknown };
  const summary: unknown = Reflect.get(Object(error), "summary");
  return [message, summary].find((each): each is string => typeof each === "string" && each !== "");
}
