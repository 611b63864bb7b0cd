/**
 * Writes a folder over and over, by turns with `even` and `odd` files, until it is killed:
 * `node --import tsx write-again-and-again.ts FOLDER`. Says `ready` once the first is there.
 */
import { writeFolder } from '../../cli/write-folder.ts';
import { turnOf } from './written-turns.ts';

const [target] = process.argv.slice(2);
for (let turn = 0; ; turn++) {
  await writeFolder(target, turnOf(turn % 2));
  if (turn === 0) console.log('ready');
}
