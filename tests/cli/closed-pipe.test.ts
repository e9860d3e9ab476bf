import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../run-cupbook.ts';

test('a command whose reader has enough ends without a word', async () => {
  const child = spawn(process.execPath, [join(ROOT, 'src/cli/cupbook.mjs'), 'explain']);
  let said = '';
  child.stderr.on('data', (text) => {
    said += text;
  });
  child.stdout.destroy();
  const [code] = await once(child, 'close');
  expect({ code, said }).toEqual({ code: 0, said: '' });
});
