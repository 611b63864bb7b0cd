// Keeps the same few results over and over in the folder named, until it is killed.
import { ResultsOnDisk } from '../../../cli/cache/results-on-disk.ts';

const [folder] = process.argv.slice(2);
const store = new ResultsOnDisk(folder, 'v1');
for (let turn = 0; ; turn++) {
  const key = turn % 8;
  store.write(`key ${key}`, new Float32Array(200_000).fill(key));
  if (turn === 0) process.stdout.write('begun\n');
}
