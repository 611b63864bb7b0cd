/**
 * Runs command lines of the compiled program one after the other in this process, started once for all of them:
 * `node in-turn.mjs '[["check","a.yaml"], ...]'`. Tells of each on descriptor 3, as a line of JSON.
 */
import { writeSync } from 'node:fs';
import { stripVTControlCharacters as plain } from 'node:util';
import { runProgram } from '../../dist/cli/program.js';

for (const args of JSON.parse(process.argv[2])) {
  const said = [];
  const say = (text) => void said.push(plain(text));
  const before = process.cpuUsage();
  const code = await runProgram(args, { out: say, err: say, width: 100 });
  const { user, system } = process.cpuUsage(before);
  const { maxRSS } = process.resourceUsage();
  const told = { code, out: said.join('\n'), cpuSeconds: (user + system) / 1e6, megabytes: maxRSS / 1024 };
  writeSync(3, `${JSON.stringify(told)}\n`);
}
