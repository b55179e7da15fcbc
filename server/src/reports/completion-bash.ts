/** Completion for bash 4 and later. */
import type { CommandTable, OptionRow, Value } from "./command-table.ts";

/** Names of commands, options and choices are plain words, so they need no quoting; whatever is none is left out. */
const plainWords = (words: readonly string[]): string =>
  words.filter((word) => /^[\w.+-]+$/u.test(word)).join(" ");

/** What is offered for a value, as a command of the shell. */
function offer(value: Value): string {
  switch (value.kind) {
    case "words":
      return `_finishwright_words "${plainWords(value.words)}"`;
    case "recipes":
      return "_finishwright_files '*.finish'";
    case "file":
      return "_finishwright_files '*'";
    case "folder":
      return "_finishwright_files ''";
    case "other":
      return ":";
  }
}

const valueCases = (options: readonly OptionRow[], indent: string): readonly string[] =>
  options.flatMap(({ names, takes }) =>
    takes ? [`${indent}${plainWords(names).replaceAll(" ", "|")}) ${offer(takes.value)}; return ;;`] : [],
  );

/** The script as a whole; it is read once by the shell and asks nothing of the program. */
export function bashCompletion({ name, commands, options }: CommandTable): string {
  const own = plainWords(options.flatMap(({ names }) => names));
  const cases = commands.flatMap((command) => {
    const values = valueCases(command.options, "        ");
    const words = plainWords(command.options.flatMap(({ names }) => names));
    const [argument] = command.arguments;
    return [
      `    ${command.name})`,
      ...(values.length > 0 ? ['      case "$before" in', ...values, "      esac"] : []),
      `      if [[ $current == -* ]]; then _finishwright_words "${words}"; return; fi`,
      `      ${argument ? offer(argument.value) : ":"}`,
      "      ;;",
    ];
  });
  return `# Completion of ${name} for bash, printed by \`${name} completion bash\`.

_finishwright_words() {
  mapfile -t COMPREPLY < <(compgen -W "$1" -- "$current")
}

# Folders, and files that match a pattern.
_finishwright_files() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(
    compgen -d -- "$current"
    [[ -n $1 ]] && compgen -f -X "!$1" -- "$current" | while IFS= read -r file; do
      [[ -d $file ]] || printf '%s\\n' "$file"
    done
  )
}

_finishwright() {
  local current=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} command= at
  COMPREPLY=()
  # Bash takes the sign of \`--format=json\` for a word of its own.
  if [[ $current == = ]]; then current=
  elif [[ $before == = ]]; then before=\${COMP_WORDS[COMP_CWORD-2]}; fi
  for ((at = 1; at < COMP_CWORD; at++)); do
    if [[ \${COMP_WORDS[at]} != -* ]]; then command=\${COMP_WORDS[at]}; break; fi
  done
  case "$command" in
    '')
      if [[ $current == -* ]]; then _finishwright_words "${own}"; return; fi
      _finishwright_words "${plainWords(commands.map((each) => each.name))}"
      ;;
${cases.join("\n")}
  esac
}

complete -F _finishwright ${name}
`;
}
