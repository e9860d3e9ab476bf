/**
 * Who writes: every file and folder that is only there for a while carries the name of the writer that made it, so that the next one
 * knows whether it is still at work.
 *
 * @packageDocumentation
 */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { promisify } from 'node:util';

/** One run of a writer. `text` is unique for ever: machine, process, start of the process, and a count in it. */
export interface Writer {
  readonly machine: string;
  readonly pid: number;
  /** When the process started; what it is counted in is the system's. */
  readonly start: string;
  readonly count: number;
}

/** How a writer is written in names, and what may follow it. */
const NAME = /^(.*)\.cupbook-([0-9a-f]{8})-(\d+)-([0-9a-z]+)-(\d+)\.(tmp|lock)$/;

/**
 * Name of something that is there for a while.
 *
 * @example passingName('site', writer, 'tmp') // 'site.cupbook-1f0c9a2b-4711-k3x9-0.tmp'
 */
export function passingName(base: string, { machine, pid, start, count }: Writer, ending: 'tmp' | 'lock'): string {
  return `${base}.cupbook-${machine}-${pid}-${start}-${count}.${ending}`;
}

/** The parts of such a name; undefined for any other. */
export function readPassingName(
  name: string,
): { readonly base: string; readonly writer: Writer; readonly ending: string } | undefined {
  const [, base, machine, pid, start, count, ending] = NAME.exec(name) ?? [];
  if (base === undefined) return undefined;
  return {
    base,
    writer: { machine: machine!, pid: Number(pid), start: start!, count: Number(count) },
    ending: ending!,
  };
}

let count = 0;

/** Writers of this process that are at work. */
const atWork = new Set<number>();

/** Has a new writer of this process do something, after which it is gone. */
export async function asWriter<T>(act: (writer: Writer) => Promise<T>): Promise<T> {
  count += 1;
  const number = count;
  const writer = { machine: MACHINE, pid: process.pid, start: await ownStart(), count: number };
  atWork.add(writer.count);
  try {
    return await act(writer);
  } finally {
    atWork.delete(writer.count);
  }
}

/** Whether a writer is at work, as far as this machine can tell: `elsewhere` is on another machine or in another container. */
export async function writerState({
  machine,
  pid,
  start,
  count: number,
}: Writer): Promise<'gone' | 'working' | 'elsewhere'> {
  if (machine !== MACHINE) return 'elsewhere';
  if (pid === process.pid) return start === (await ownStart()) && atWork.has(number) ? 'working' : 'gone';
  if (!isRunning(pid)) return 'gone';
  // Its number may have been given to another process since.
  const started = await startOf(pid);
  if (started === undefined) return 'elsewhere';
  return sameStart(started, start) ? 'working' : 'gone';
}

/** This machine, or the container: process numbers mean the same within it alone. */
const MACHINE = createHash('sha256')
  .update(`${hostname()}\n${ifThere(() => readlinkSync('/proc/self/ns/pid')) ?? ''}`)
  .digest('hex')
  .slice(0, 8);

let own: Promise<string> | undefined;

function ownStart(): Promise<string> {
  own ??= Promise.resolve(startOnLinux(process.pid) ?? Math.round(performance.timeOrigin).toString(36));
  return own;
}

/** Start of a process that runs, in the form of `Writer.start`; undefined where the system does not tell. */
async function startOf(pid: number): Promise<string | undefined> {
  const exact = startOnLinux(pid);
  if (exact !== undefined) return exact;
  const ask: readonly [string, readonly string[]] =
    process.platform === 'win32'
      ? ['powershell', ['-NoProfile', '-Command', `(Get-Process -Id ${pid}).StartTime.ToUniversalTime().ToString('o')`]]
      : ['ps', ['-o', 'lstart=', '-p', String(pid)]];
  try {
    const { stdout } = await promisify(execFile)(...ask, { env: { ...process.env, LC_ALL: 'C' }, timeout: 10_000 });
    const ms = Date.parse(stdout.trim());
    return Number.isNaN(ms) ? undefined : ms.toString(36);
  } catch {
    return undefined;
  }
}

/** Clock ticks since the start of the machine, and which start of it that was. Source: proc(5), field 22 of stat. */
function startOnLinux(pid: number): string | undefined {
  const stat = ifThere(() => readFileSync(`/proc/${pid}/stat`, 'latin1'));
  const boot = ifThere(() => readFileSync('/proc/sys/kernel/random/boot_id', 'latin1'));
  // The second field is the program's name, which may hold spaces and brackets.
  const ticks = stat?.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
  return ticks === undefined || boot === undefined ? undefined : `t${boot.slice(0, 8)}${Number(ticks).toString(36)}`;
}

/** What else tells a start is rounded to seconds, and moves with the clock. */
const NEAR_MS = 60_000;

function sameStart(one: string, other: string): boolean {
  if (one === other || one.startsWith('t') || other.startsWith('t')) return one === other;
  return Math.abs(Number.parseInt(one, 36) - Number.parseInt(other, 36)) < NEAR_MS;
}

/** Whether a process of this machine runs; signal 0 only asks. */
function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function ifThere(look: () => string): string | undefined {
  try {
    return look();
  } catch {
    return undefined;
  }
}
