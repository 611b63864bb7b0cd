// Keeps the same few results over and over in the folder named, until it is killed.
const [, , folder, module] = process.argv;
const { ResultsOnDisk } = await import(module);
const store = new ResultsOnDisk(folder, 'v1');
for (let turn = 0; ; turn++) {
  const key = turn % 8;
  store.write(`key ${key}`, new Float32Array(200_000).fill(key));
  if (turn === 0) process.stdout.write('begun\n');
}
