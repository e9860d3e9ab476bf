import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import type { Files } from './slips.ts';

/** Files after the one edit that a diagnostic offers; undefined where it offers none, several, or one in words alone. */
export function applyFix(files: Files, { file, start, end, fix = '' }: Diagnostic): Files | undefined {
  const text = files[file];
  if (text === undefined) return undefined;
  const renamed = /^rename it to `([^`]+)`/.exec(fix)?.[1] ?? /^move it to (\S+\/)(?:$|,)/.exec(fix)?.[1];
  if (renamed !== undefined) {
    const { [file]: _, ...others } = files;
    const name = renamed.endsWith('/')
      ? renamed + file.slice(file.lastIndexOf('/') + 1)
      : file.replace(/[^/]*$/, renamed);
    return { ...others, [name]: text };
  }
  const lines = text.split('\n');
  const at = start.line - 1;
  const line = lines[at] ?? '';
  if (fix.startsWith('write `---` on a line of its own above it'))
    return { ...files, [file]: lines.toSpliced(at, 0, '---').join('\n') };
  const written = /^write `([^`]+)`(?:$|[,;:](?! or ))/.exec(fix)?.[1];
  if (written === undefined || (end !== undefined && end.line !== start.line)) return undefined;
  const to = end?.column ?? start.column;
  return {
    ...files,
    [file]: lines.with(at, line.slice(0, start.column - 1) + written + line.slice(to - 1)).join('\n'),
  };
}
