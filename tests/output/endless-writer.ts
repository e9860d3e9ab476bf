// A process that writes one site after another to a folder until it is killed: `FOLDER` and `SERVED` in its environment.
import { prepareOutput, writeSite } from '../../src/output/write-site.ts';
import { numberedSite } from './numbered-site.ts';
import { filesOf, outputAt } from './sites.ts';

const output = outputAt(process.env.FOLDER!, { served: process.env.SERVED === 'yes' });
await prepareOutput(output);
for (let number = Number(process.env.FIRST); ; number += 1) {
  process.stdout.write(`${number}\n`);
  await writeSite(filesOf(numberedSite(number)), output);
}
