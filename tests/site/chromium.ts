import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { brotliDecompress } from 'node:zlib';

/** How to start a browser. */
export interface Chromium {
  readonly executablePath: string;
  readonly env: Record<string, string>;
}

const decompress = promisify(brotliDecompress);

/** Folders in which a Linux keeps the libraries that Chromium links. */
const LIBRARY_FOLDERS = ['/lib/x86_64-linux-gnu', '/usr/lib/x86_64-linux-gnu', '/usr/lib64', '/usr/lib'];

/** Why this machine has no browser for the tests, and what to do about it; undefined where it has one. `CHROMIUM_PATH=none` asks for none. */
export function whyNoChromium({
  platform,
  arch,
  env,
}: Pick<NodeJS.Process, 'platform' | 'arch' | 'env'> = process): string | undefined {
  if (env.CHROMIUM_PATH === 'none') return 'CHROMIUM_PATH is `none`.';
  if (env.CHROMIUM_PATH || (platform === 'linux' && arch === 'x64')) return undefined;
  return `the browser that comes with the tests is for Linux on x64, and this is ${platform} on ${arch}. Set CHROMIUM_PATH to a Chrome or Chromium of this machine to run them.`;
}

/**
 * The browser for the tests: the one that `CHROMIUM_PATH` names, or the one in the package `@sparticuz/chromium`, with
 * the libraries and the font that a slim machine lacks, so that the tests need nothing but `npm ci`.
 *
 * The package's own function unpacks to a fixed place in /tmp and takes what it finds there, even half a file: two runs
 * at once break each other. Here it is unpacked once a version into node_modules, aside, and renamed at the end.
 */
export async function chromium(): Promise<Chromium> {
  const env = Object.fromEntries(
    Object.entries(process.env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );
  if (env.CHROMIUM_PATH) return { executablePath: env.CHROMIUM_PATH, env };
  const why = whyNoChromium();
  if (why !== undefined) throw new Error(`There is no browser: ${why}`);
  const folder = await unpacked();
  if (!LIBRARY_FOLDERS.some((libraries) => existsSync(join(libraries, 'libnss3.so')))) {
    env.LD_LIBRARY_PATH = join(folder, 'libraries/lib');
  }
  env.FONTCONFIG_FILE ??= join(folder, 'fonts.conf');
  return { executablePath: join(folder, 'chromium'), env };
}

async function unpacked(): Promise<string> {
  const packageFolder = resolve(
    createRequire(join(process.cwd(), 'package.json')).resolve('@sparticuz/chromium'),
    '../../..',
  );
  const { version } = JSON.parse(await readFile(join(packageFolder, 'package.json'), 'utf8')) as { version: string };
  const folder = resolve(packageFolder, '../../.cache/chromium', version);
  if (existsSync(folder)) return folder;

  const aside = `${folder}.${process.pid}.tmp`;
  const packed = async (name: string): Promise<Buffer> =>
    decompress(await readFile(join(packageFolder, 'bin', `${name}.br`)));
  const unpack = async (name: string, into: string): Promise<void> => {
    await mkdir(into, { recursive: true });
    execFileSync('tar', ['-x', '-C', into], { input: await packed(`${name}.tar`) });
  };
  await mkdir(aside, { recursive: true });
  await writeFile(join(aside, 'chromium'), await packed('chromium'), { mode: 0o755 });
  await unpack('al2023', join(aside, 'libraries'));
  await unpack('swiftshader', aside);
  await unpack('fonts', join(aside, 'fonts'));
  await writeFile(join(aside, 'fonts.conf'), fontSettings(folder));
  await rename(aside, folder).catch(async (error: unknown) => {
    await rm(aside, { recursive: true, force: true });
    // Another run was faster, and what it unpacked is the same.
    if (!existsSync(folder)) throw error;
  });
  return folder;
}

/** The machine's own fonts, and one more: without any, every text has no width. */
function fontSettings(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <include ignore_missing="yes">/etc/fonts/fonts.conf</include>
  <dir>${folder}/fonts</dir>
  <cachedir>${folder}/font-cache</cachedir>
</fontconfig>
`;
}
