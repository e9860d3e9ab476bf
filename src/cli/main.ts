import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { nearestName } from '../diagnostics/nearest-name.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { batchCommand } from './batch.ts';
import { buildCommand } from './build.ts';
import { checkCommand } from './check.ts';
import { chipsCommand } from './chips.ts';
import { type Command, type Option, parseArgsOptions } from './command.ts';
import { defaultRecipes } from './default-recipes.ts';
import { explainCommand } from './explain.ts';
import { explainError } from './explain-error.ts';
import { filmsCommand } from './films.ts';
import { helpText } from './help.ts';
import { letDownCommand, matchCommands } from './matching.ts';
import { newCommand } from './new.ts';
import { photoCommand } from './photo.ts';
import { serveCommand } from './serve.ts';
import { versionText } from './version.ts';

const COMMANDS: readonly Command[] = [
  serveCommand,
  buildCommand,
  checkCommand,
  explainCommand,
  newCommand,
  batchCommand,
  ...matchCommands,
  chipsCommand,
  photoCommand,
  filmsCommand,
];

/** What a command is called that had another name. */
const RENAMED: ReadonlyMap<string, Command> = new Map([['thin', letDownCommand]]);

/** Options that every command takes. */
const COMMON: Readonly<Record<string, Option>> = {
  recipes: { value: 'DIR', help: 'folder of the book (default: CUPBOOK_RECIPES, or recipes)' },
  help: { help: 'explain a command' },
  trace: { help: 'print a stack trace on an unexpected error' },
};

/**
 * Runs one command line and returns the exit code: 0 done, 1 the book or the surroundings stopped it, 2 the command line
 * is wrong. Throws nothing.
 */
export async function main(line: readonly string[], { root }: { readonly root: string }): Promise<number> {
  const trace = line.includes('--trace');
  try {
    return await run(line, root);
  } catch (error) {
    console.error(explainError(error, trace));
    const refused = COMMANDS.find(({ name }) => name === line[0])?.refused?.(line, explainError(error, false));
    if (refused !== undefined) console.log(refused);
    return error instanceof WrongLine ? 2 : 1;
  }
}

/** A command line that cannot be understood. */
class WrongLine extends Refusal {}

async function run(line: readonly string[], root: string): Promise<number> {
  const [first, ...rest] = line;
  if (first === undefined || first === 'help' || first === '--help' || first === '-h') {
    console.log(helpText(COMMANDS, COMMON, rest[0]));
    return 0;
  }
  if (first === 'version' || first === '--version') {
    console.log(versionText(root));
    return 0;
  }
  const command = COMMANDS.find(({ name }) => name === first);
  const renamed = RENAMED.get(first);
  if (renamed)
    throw new WrongLine(
      `The command "${first}" is called "${renamed.name}" now: cupbook ${renamed.name} ${renamed.usage}`,
    );
  if (!command)
    throw new WrongLine(unknown('command', first, [...COMMANDS.map(({ name }) => name), 'help', 'version']));

  const options = { ...command.options, ...COMMON };
  const known = parseArgsOptions(options);
  const { values, positionals, tokens } = parseArgs({
    args: rest,
    options: { ...known, help: { type: 'boolean', short: 'h' } },
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const option = options[token.name];
    if (!option)
      throw new WrongLine(
        unknown(
          'option',
          token.rawName,
          Object.keys(options).map((name) => `--${name}`),
        ),
      );
    if (option.value !== undefined && (token.value ?? '') === '') {
      throw new WrongLine(`The option ${token.rawName} needs a value: ${token.rawName} ${option.value}.`);
    }
    if (option.value === undefined && token.value !== undefined) {
      throw new WrongLine(`The option ${token.rawName} takes no value.`);
    }
  }
  if (values.help) {
    console.log(helpText(COMMANDS, COMMON, command.name));
    return 0;
  }
  const [least, most] = command.words;
  if (positionals.length < least || positionals.length > most) {
    const what = positionals.length < least ? 'needs more words' : `takes no word "${positionals[most]}"`;
    throw new WrongLine(`"${command.name}" ${what}: cupbook ${command.name} ${command.usage}`.trimEnd());
  }

  const from = process.env.INIT_CWD ?? process.cwd();
  const recipes = typeof values.recipes === 'string' ? resolve(from, values.recipes) : defaultRecipes(root, from);
  // Eleventy takes the folder that it runs in for the project's.
  process.chdir(root);
  return command.run(positionals, values as Readonly<Record<string, string | boolean | undefined>>, {
    root,
    from,
    recipes,
  });
}

function unknown(what: string, name: string, known: readonly string[]): string {
  const nearest = nearestName(name, known);
  const hint = nearest === undefined ? `There are: ${known.join(', ')}.` : `Did you mean ${nearest}?`;
  return `There is no ${what} "${name}". ${hint}`;
}
