#!/usr/bin/env node
import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runProgram } from './program.ts';
import { processTerminal } from './terminal.ts';

// Only when started as a program, not when imported. npx starts it through a link.
if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  process.exitCode = await runProgram(process.argv.slice(2), processTerminal());
}
