import type { Reporter, TestModule } from 'vitest/node';

/** Ends a test run with one plain line, `N passed, N failed, N skipped`, that any build server can read. */
export default class PlainLineReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[] = []): void {
    const count = { passed: 0, failed: unhandled.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      count.failed += module.errors().length;
      for (const test of module.children.allTests()) count[test.result().state] += 1;
    }
    console.log(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped`);
  }
}
