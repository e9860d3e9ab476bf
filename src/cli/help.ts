import type { Command, Option } from './command.ts';

/** Help for one command, or the list of all where the name is none of them. */
export function helpText(
  commands: readonly Command[],
  common: Readonly<Record<string, Option>>,
  name?: string,
): string {
  const command = commands.find((candidate) => candidate.name === name);
  if (!command) {
    return [
      'Cupbook: a book of recipes for soft-plastic lures, from a folder of Markdown.',
      '',
      ...table(commands.map((each) => [`cupbook ${each.name}`, each.summary])),
      ...table([
        ['cupbook help COMMAND', 'say more about a command'],
        ['cupbook version', 'print the version'],
      ]),
      '',
      'With every command:',
      ...table(optionRows(common)),
    ].join('\n');
  }
  const options = optionRows({ ...command.options, ...common });
  return [
    `cupbook ${command.name} ${command.usage}`.trimEnd(),
    `  ${command.summary}`,
    ...(command.details === undefined ? [] : ['', command.details]),
    '',
    ...table(options),
  ].join('\n');
}

function optionRows(options: Readonly<Record<string, Option>>): readonly (readonly [string, string])[] {
  return Object.entries(options).map(([name, { value, help }]) => [
    `--${name}${value === undefined ? '' : ` ${value}`}`,
    help,
  ]);
}

/** Widest first column of a table of help, so that the tables of one text stand in line. */
const FIRST_COLUMN = 22;

function table(rows: readonly (readonly [string, string])[]): readonly string[] {
  return rows.map(([left, right]) => `  ${left.padEnd(FIRST_COLUMN)}  ${right}`);
}
