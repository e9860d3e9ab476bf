import type { Reporter, TestModule, Vitest } from 'vitest/node';

/** Ends a test run with one plain line, `N passed, N failed, N skipped`, that any build server can read. */
export default class PlainLineReporter implements Reporter {
  private measures = false;

  onInit({ config }: Vitest): void {
    this.measures = config.coverage.enabled;
  }

  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[] = []): void {
    const count = { passed: 0, failed: unhandled.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      count.failed += module.errors().length;
      for (const test of module.children.allTests()) count[test.result().state] += 1;
    }
    const line = `\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped`;
    // What is covered is printed after this, and the line must stand last.
    if (this.measures) process.once('exit', () => console.log(line));
    else console.log(line);
  }
}
