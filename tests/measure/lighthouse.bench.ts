/**
 * How Lighthouse judges four pages of the demo book on a simulated phone: median of three runs each, and which audits a page fails.
 *
 *     npm run bench lighthouse
 *
 * Among all benchmarks it does nothing, since Lighthouse is fetched for it. On a busy machine the performance is worse than it is.
 */
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { runCupbook } from '../run-cupbook.ts';
import { chromium } from '../site/chromium.ts';
import { serveFolder } from '../site/static-server.ts';

const LIGHTHOUSE = 'lighthouse@12.8.2';
const PAGES = ['', 'colours/eel-bridge/', 'find/', 'match/'] as const;
const RUNS = 3;
/** What is asked of each category, of 100. */
const ASKED = 95;

interface Report {
  readonly categories: Readonly<Record<string, { readonly score: number; readonly auditRefs: readonly Ref[] }>>;
  readonly audits: Readonly<Record<string, { readonly score: number | null; readonly displayValue?: string }>>;
}

interface Ref {
  readonly id: string;
  readonly weight: number;
}

const run = promisify(execFile);

/** Whether it is there to be asked; says why where it is not. */
async function fetched(): Promise<boolean> {
  try {
    await run('npx', ['--yes', LIGHTHOUSE, '--version']);
    return true;
  } catch (error) {
    console.error(`${LIGHTHOUSE} cannot be fetched, so no page was judged. ${(error as Error).message}`);
    return false;
  }
}

async function judged(address: string, folder: string): Promise<Report> {
  const { executablePath, env } = await chromium();
  const file = join(folder, 'report.json');
  const flags = ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'].join(' ');
  await run(
    'npx',
    ['--yes', LIGHTHOUSE, address, '--quiet', '--output=json', `--output-path=${file}`, `--chrome-flags=${flags}`],
    { env: { ...env, CHROME_PATH: executablePath }, maxBuffer: 1 << 26 },
  );
  return JSON.parse(await readFile(file, 'utf8')) as Report;
}

const middle = (values: readonly number[]): number => values.toSorted((one, other) => one - other)[values.length >> 1]!;

function failed({ categories, audits }: Report): string {
  const refs = Object.values(categories).flatMap(({ auditRefs }) => auditRefs);
  return refs
    .filter(({ id, weight }) => weight > 0 && (audits[id]?.score ?? 1) < 0.9)
    .map(({ id }) => `${id}${audits[id]!.displayValue ? ` ${audits[id]!.displayValue}` : ''}`)
    .join(', ');
}

async function judgeAll(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'cupbook-lighthouse-'));
  const { code, stderr } = await runCupbook(['build', '--output', join(folder, 'site')]);
  if (code !== 0) throw new Error(stderr);
  const server = await serveFolder(join(folder, 'site'), '/book/');
  console.log(`load of this machine: ${loadavg()[0]!.toFixed(1)}`);
  for (const page of PAGES) {
    const reports: Report[] = [];
    for (let run = 0; run < RUNS; run++) reports.push(await judged(server.address + page, folder));
    const names = Object.keys(reports[0]!.categories);
    const scores = names.map((name) =>
      middle(reports.map(({ categories }) => Math.round(100 * categories[name]!.score))),
    );
    if (scores.some((score) => score < ASKED)) process.exitCode = 1;
    console.log(`${page || 'home'}: ${names.map((name, at) => `${name} ${scores[at]}`).join(', ')}`);
    const last = failed(reports.at(-1)!);
    if (last !== '') console.log(`  fails: ${last}`);
  }
  await server.close();
  await rm(folder, { recursive: true, force: true });
}

if (process.argv[2]?.startsWith('lighthouse')) {
  if (await fetched()) await judgeAll();
  else process.exitCode = 1;
}
