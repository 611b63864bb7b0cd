import { relative } from 'node:path';
import type { Reporter, TestModule } from 'vitest/node';

/** Says at the end of a run which files took longest: where a suite that has grown slow is to be mended. */
export class SlowestReporter implements Reporter {
  constructor(private readonly count = 10) {}

  onTestRunEnd(modules: readonly TestModule[]): void {
    const spent = modules
      .map((module) => ({ file: relative(process.cwd(), module.moduleId), seconds: secondsOf(module) }))
      .sort((a, b) => b.seconds - a.seconds)
      .slice(0, this.count);
    const lines = spent.map(({ file, seconds }) => `${seconds.toFixed(1).padStart(8)} s  ${file}`);
    console.log(['The slowest test files:', ...lines].join('\n'));
  }
}

/** Loading what the file imports, and running it. */
function secondsOf(module: TestModule): number {
  const { collectDuration, duration, setupDuration } = module.diagnostic();
  return (collectDuration + setupDuration + duration) / 1000;
}
