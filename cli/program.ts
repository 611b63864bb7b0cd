import { Command, CommanderError } from 'commander';
import type { ArrangeOptions } from './commands/arrange.ts';
import type { BatchCommandOptions } from './commands/batch.ts';
import type { BuildCommandOptions } from './commands/build.ts';
import type { CheckOptions } from './commands/check.ts';
import type { GateOptions } from './commands/gate.ts';
import type { InspectOptions } from './commands/inspect.ts';
import type { NewOptions } from './commands/new.ts';
import type { PourOptions } from './commands/pour.ts';
import { type ExitCode, exitCode, Unreadable } from './exit.ts';
import type { Terminal } from './terminal.ts';
import { version } from './version.ts';

const exitCodesHelp = `
Exit codes: 0 fine; 1 a finding says stop; 2 the input cannot be read; 3 a fault of discwright.`;

const batchExamples = `
Examples:
  discwright batch presets/hedgerow --vary disc.diameter=6in,9in,12in
  discwright batch charms.yaml --vary "disc.thickness=1/2in..1in step 1/8in"
  discwright batch charms.yaml --table orders.csv --shard 2/5
`;

const batchExitCodesHelp = `
Exit codes: 0 all variants fine; 1 one has a stop or was not built; 2 an argument cannot be read or the
folder not written; 3 a fault of discwright; 130 broken off with Ctrl-C.`;

const examples = `
Examples:
  discwright new charms.yaml --diameter 9in
  discwright inspect beetle.stl
  discwright check charms.yaml
  discwright arrange charms.yaml
  discwright gate charms.yaml
  discwright build charms.yaml --out out
  discwright batch charms.yaml --vary disc.diameter=6in,9in,12in
  discwright pour charms.yaml
  discwright preview charms.yaml`;

/** Shown under a command's help: what it is typed like, and what its exit codes say. */
const example = (line: string): string => `\nExample:\n  discwright ${line}\n${exitCodesHelp}`;

/**
 * Runs one command line and returns the exit code. Commands are loaded when called, so that --help needs no geometry
 * kernel. Never throws: what the user can mend is one line, what he cannot is said to be our fault.
 */
export async function runProgram(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  let code: ExitCode = exitCode.fine;
  const program = describeProgram(terminal, (result) => {
    code = result;
  });
  try {
    await program.parseAsync(args as string[], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCode.fine : exitCode.unreadable;
    if (error instanceof Unreadable) {
      terminal.err(`discwright: ${error.message}`);
      return exitCode.unreadable;
    }
    // By its name: its room is too heavy to be loaded for --help.
    if (error instanceof Error && error.name === 'KernelExhausted')
      terminal.err(`discwright: ${error.message}. Take coarser masters, or fewer of them on one disc.`);
    else sayOurFault(error, terminal);
    return exitCode.ours;
  }
}

function sayOurFault(error: unknown, terminal: Terminal): void {
  const [says] = (error instanceof Error ? error.message : String(error)).split('\n', 1);
  terminal.err(
    `discwright: a fault of the program: ${says}. Please report it with the plan; DISCWRIGHT_DEBUG=1 shows more.`,
  );
  if (process.env.DISCWRIGHT_DEBUG && error instanceof Error) terminal.err(error.stack ?? '');
}

const noCache = 'make everything anew, and keep nothing for later runs';

type Done = (code: ExitCode) => void;

function describeProgram(terminal: Terminal, done: Done): Command {
  const program = new Command('discwright')
    .description(
      'Turns a text plan of a two-part disc mold into solids, and says beforehand whether it will work.',
    )
    .version(version)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => terminal.out(text.trimEnd()),
      writeErr: (text) => terminal.err(text.trimEnd()),
    })
    .addHelpText('after', `${examples}\n${exitCodesHelp}`);
  for (const describe of [
    describeNew,
    describeInspect,
    describeCheck,
    describeArrange,
    describeGate,
    describeBuild,
    describeBatch,
    describePour,
    describePreview,
  ]) {
    describe(program, terminal, done);
  }
  return program;
}

function describeNew(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('new')
    .description('write a commented starter plan')
    .argument('[file]', 'where to write it; printed when left out')
    .option('--diameter <length>', 'disc diameter, such as 9in or 230mm; 250mm or 9in when left out')
    .option('--process <name>', 'rubber, rigid or poured', 'rubber')
    .option('--unit <unit>', 'write lengths in mm or in', 'mm')
    .option('--from <meshes...>', 'make a whole plan: these STL, OBJ or 3MF files laid out, gated and vented')
    .option(
      '--count <counts...>',
      'how many of each mesh, or of one: 3 or beetle=6; left out, as many as fit',
    )
    .addHelpText('after', example('new charms.yaml --diameter 9in --from charms/*.stl'))
    .action(async (file: string | undefined, options: NewOptions) => {
      const { runNew } = await import('./commands/new.ts');
      done(await runNew(file, options, terminal));
    });
}

function describeInspect(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('inspect')
    .description('read, mend and measure meshes')
    .argument('<files...>', 'STL, OBJ or 3MF files')
    .option('--unit <unit>', 'what a length in the files means: mm, cm, m, in, ft, micron')
    .option('--scale <share>', 'how large it is to be made, such as 50%')
    .option('--length <length>', 'how long it is to be made, seen from above, such as 1 1/4in')
    .option('--height <length>', 'how high it is to be made')
    .option('--alloy <name>', 'what it is to be cast in, for its mass: a name, or a density such as 7.3g/cm3')
    .option('--lie', 'rank the ways it can lie, and how deep, by the undercut they leave')
    .option('--json', 'print JSON')
    .addHelpText('after', example('inspect beetle.stl --length 1.25in --alloy tin'))
    .action(async (files: string[], options: InspectOptions) => {
      const { runInspect } = await import('./commands/inspect.ts');
      done(await runInspect(files, options, terminal));
    });
}

function describeCheck(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('check')
    .description('say whether the mold closes, holds and leaves enough rubber')
    .argument('[plan]', 'a plan file, or a folder with a plan.yaml in it')
    .option('--json', 'print the report as JSON')
    .option('--fields', 'find the thickness of the walls all over each cavity as well')
    .option('--quiet', 'no progress')
    .option('--no-cache', noCache)
    .option('--explain <code>', 'say what a finding means, its source and what to do, such as cover.thin')
    .addHelpText('after', example('check presets/hedgerow'))
    .action(async (plan: string | undefined, options: CheckOptions & { readonly explain?: string }) => {
      if (options.explain !== undefined) {
        const { runExplain } = await import('./commands/explain.ts');
        done(runExplain(options.explain, terminal));
        return;
      }
      if (plan === undefined)
        throw new Unreadable('check needs a plan, or --explain with the code of a finding');
      const { runCheck } = await import('./commands/check.ts');
      done(await runCheck(plan, options, terminal));
    });
}

function describeArrange(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('arrange')
    .description('lay what the plan wishes for under `arrange` on the disc, with straight gates')
    .argument('<plan>', 'a plan file, or a folder with a plan.yaml in it')
    .option('--write', 'write it into the plan, in place of what was arranged before and is not locked')
    .option('--json', 'print the layout as JSON')
    .option('--quiet', 'no progress')
    .option('--no-cache', noCache)
    .addHelpText('after', example('arrange charms.yaml --write'))
    .action(async (plan: string, options: ArrangeOptions) => {
      const { runArrange } = await import('./commands/arrange.ts');
      done(await runArrange(plan, options, terminal));
    });
}

function describeGate(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('gate')
    .description('propose gates and vents by how each cavity fills')
    .argument('<plan>', 'a plan file, or a folder with a plan.yaml in it')
    .option('--write', 'write them into the plan; gates and vents with an entry or a path of their own stay')
    .option('--json', 'print JSON')
    .option('--quiet', 'no progress')
    .option('--no-cache', noCache)
    .addHelpText('after', example('gate presets/hedgerow'))
    .action(async (plan: string, options: GateOptions) => {
      const { runGate } = await import('./commands/gate.ts');
      done(await runGate(plan, options, terminal));
    });
}

function describeBuild(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('build')
    .description('make the solids and write them with a report and a manifest')
    .argument('<plan>', 'a plan file, or a folder with a plan.yaml in it')
    .option('--out <folder>', 'where the folder with the results goes', 'out')
    .option(
      '--only <names...>',
      'only the solids whose name or kind begins with one of these, such as halves,tab,jig',
    )
    .option(
      '--formats <names...>',
      'only these kinds of files, such as stl 3mf; the manifest is always written',
    )
    .option('--replace', 'give up what was built from another plan in the same folder')
    .option('--json', 'print the manifest and report as JSON')
    .option('--quiet', 'no progress and no report, only what is withheld')
    .option('--no-cache', noCache)
    .addHelpText('after', example('build presets/hedgerow --out out --only sprue-form tab'))
    .action(async (plan: string, options: BuildCommandOptions) => {
      const { runBuild } = await import('./commands/build.ts');
      done(await runBuild(plan, options, terminal));
    });
}

function describeBatch(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('batch')
    .description('make variants of a plan, each in a folder of its own, and a summary over all')
    .argument('<plan>', 'a plan file, or a folder with a plan.yaml in it')
    .option(
      '--vary <field=values>',
      'what takes which values, such as disc.diameter=6in,9in or disc.diameter=150..300/25; may be given again',
      (value: string, before: readonly string[] = []) => [...before, value],
    )
    .option('--together', 'take the first values of all with each other, and so on, instead of each with all')
    .option(
      '--table <file>',
      'CSV with one row a variant: its head names fields; a column `name` is optional',
    )
    .option('--only <names...>', 'as for build')
    .option('--formats <names...>', 'as for build; a small picture of each variant too when left out')
    .option('--out <folder>', 'where the folder with the variants goes', 'out')
    .option('--workers <number>', 'how many to make at once; as many as there are cores when left out')
    .option('--shard <part/of>', "one machine's share, such as 2/5; the shares together are the whole")
    .option('--summary', 'make nothing, only write the summary anew from the folders that are there')
    .option('--replace', 'give up variants of another plan in the same folder')
    .option('--json', 'print what was done as JSON')
    .option('--quiet', 'no progress, and only what is not fine')
    .option('--no-cache', noCache)
    .addHelpText('after', batchExamples + batchExitCodesHelp)
    .action(async (plan: string, options: BatchCommandOptions) => {
      const { runBatch } = await import('./commands/batch.ts');
      done(await runBatch(plan, options, terminal));
    });
}

function describePour(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('pour')
    .description('note what came of a pour beside the plan, and say what to change next')
    .argument('<plan>', 'a plan file, or a folder with a plan.yaml in it')
    .option(
      '--set <name=value>',
      'instead of being asked: date, metal, mold, speed, shot, talc, changed, note, others=good, or a cavity such as snail-1="short tip 20%"; may be given again',
      (value: string, before: readonly string[] = []) => [...before, value],
    )
    .option('--report', 'print what all pours came to, and what to change next; note nothing')
    .option('--take <number>', 'write one of the proposals of --report into the plan')
    .option('--json', 'print the report as JSON')
    .option('--quiet', 'no progress')
    .option('--no-cache', noCache)
    .addHelpText(
      'after',
      example('pour charms.yaml --set speed=520rpm --set snail-1=short --set others=good'),
    )
    .action(async (plan: string, options: PourOptions) => {
      const { runPour } = await import('./commands/pour.ts');
      done(await runPour(plan, options, terminal));
    });
}

function describePreview(program: Command, terminal: Terminal, done: Done): void {
  program
    .command('preview')
    .description('look at the mold in the browser, and change it by hand')
    .argument('[plan]', 'a plan file, or a folder with a plan.yaml in it; without one, presets are offered')
    .option('--port <number>', 'port on this machine; any free one when left out')
    .option(
      '--root <folder>',
      "folder that masters may be read from; else the plan's own, and what it names now",
    )
    .addHelpText('after', example('preview presets/hedgerow'))
    .action(async (plan: string | undefined, options: { port?: string; root?: string }) => {
      const { runPreview } = await import('./commands/preview.ts');
      done(await runPreview(plan, options, terminal));
    });
}
