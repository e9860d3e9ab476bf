#!/usr/bin/env node
// Plain JavaScript of an old kind, so that an old Node can still read it and say what is wrong.
const [major, minor] = process.versions.node.split('.').map(Number);

if (major < 20 || (major === 20 && minor < 18)) {
  console.error(`Cupbook needs Node 20.18 or newer; this is Node ${process.versions.node}.`);
  process.exitCode = 1;
} else {
  start().catch((error) => {
    const [, missing] = /Cannot find package '([^']+)'/.exec(error.message) || [];
    console.error(
      missing === undefined
        ? `Cupbook could not start: ${error.message}`
        : `Cupbook could not start: its package ${missing} is not installed. Run \`npm ci\` in the folder of this program.`,
    );
    process.exitCode = 1;
  });
}

async function start() {
  // A reader such as `head` has enough before everything is said.
  process.stdout.on('error', (error) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  const { existsSync } = await import('node:fs');
  const { fileURLToPath } = await import('node:url');
  const root = fileURLToPath(new URL('../..', import.meta.url));
  if (!existsSync(new URL('../../node_modules/esbuild', import.meta.url))) {
    console.error(`Cupbook's packages are not installed yet. Run \`npm ci\` in ${root} first.`);
    process.exitCode = 1;
    return;
  }
  const { bundle } = await import('./bundle.mjs');
  const { main } = await import(await bundle('src/cli/main.ts'));
  process.exitCode = await main(process.argv.slice(2), { root });
}
