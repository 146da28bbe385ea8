/**
 * The command line. Composable and quiet: results on stdout, progress on stderr when it is a terminal, and an exit code a
 * script can trust: 0 issuable, 1 not issuable, 2 bad input, 3 our own fault.
 */
import { Command, CommanderError } from 'commander';
import { type BuyFlags, buy } from './commands/buy.js';
import { check } from './commands/check.js';
import { draw } from './commands/draw.js';
import { create } from './commands/new.js';
import { pathCommand } from './commands/path.js';
import { type SizeFlags, size } from './commands/size.js';
import { start } from './commands/start.js';
import { whyCommand } from './commands/why.js';
import { UserFault } from './files.js';
import { EXIT, type Io } from './io.js';

const processIo: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  progress: (text) => {
    if (process.stderr.isTTY) process.stderr.write(text);
  },
};

export async function main(args: readonly string[], io: Io = processIo): Promise<number> {
  let code: number = EXIT.issuable;
  const program = new Command('eavewright')
    .description('From one project file to a permit set for a roof over a patio.')
    .version('0.1.0')
    .showHelpAfterError('(add --help for the options and an example)')
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .addHelpText(
      'after',
      `
Examples:
  eavewright new gable-attached -o patio.json    a commented project file to start from
  eavewright check patio.json                    every check; exit 0 only when the set can be issued
  eavewright draw patio.json -o out              out/set.pdf and one SVG a sheet in out/sheets
  eavewright buy patio.json -o out               out/buy.pdf: what to buy, how to cut it; out/hire.pdf: scopes and bids
  eavewright why patio.json B1                   the numbers behind beam B1, step by step
  eavewright path patio.json B1                  the chain from the roof through B1 to the soil

Exit codes: 0 issuable, 1 not issuable, 2 bad input, 3 our own fault.
This program helps prepare a submittal; it certifies nothing. The authority having jurisdiction decides.`,
    );
  const run =
    <A extends unknown[]>(action: (io: Io, ...args: A) => Promise<number>) =>
    async (...args: A) => {
      code = await action(io, ...args);
    };

  program
    .command('new')
    .description('write a commented starter project for a chosen roof')
    .argument('<roof>', 'gable-attached, gable-free, shed-attached or shed-free')
    .option('-o, --output <file>', 'file to write; standard output when left out')
    .option('--force', 'replace the file when it exists')
    .addHelpText('after', '\nExample:\n  eavewright new shed-attached -o patio.json')
    .action((roof: string, o: { output?: string; force?: boolean }) => run(create)(roof, o));

  program
    .command('check')
    .description('read, place, load, analyse and check a project')
    .argument('<file>', 'project file, or - for standard input')
    .option('--json', 'print issues, results, balance and verdict as JSON')
    .option('--all', 'list passing results too')
    .addHelpText('after', '\nExample:\n  eavewright check patio.json --json | jq .issuable')
    .action((file: string, o: { json?: boolean; all?: boolean }) => run(check)(file, o));

  program
    .command('draw')
    .description('write the drawing set')
    .argument('<file>', 'project file, or - for standard input')
    .requiredOption('-o, --output <dir>', 'folder for set.pdf, sheets/ and dxf/')
    .option('--only <ids>', 'sheets to write, e.g. S-101,A-201')
    .option(
      '--dxf',
      'also write dxf/<sheet>.dxf, and dxf/model-plan.dxf with all plans at full scale unless --only is given',
    )
    .option('--size <name>', 'sheet size in place of the project’s, e.g. "ANSI B"')
    .option('--json', 'list the files written as JSON')
    .addHelpText(
      'after',
      `
Examples:
  eavewright draw patio.json -o out --only S-101,S-102
  eavewright draw patio.json -o out --dxf        for a designer's drawing program: release 2007, inches`,
    )
    .action((file: string, o: { output: string; only?: string; size?: string; dxf?: boolean; json?: boolean }) =>
      run(draw)(file, o),
    );

  program
    .command('why')
    .description('show the steps behind the numbers of a member, joint, footing or roof')
    .argument('<file>', 'project file, or - for standard input')
    .argument('<mark>', 'mark as drawn, e.g. B1, P2, F1, J3, RF1, R1')
    .option('--json', 'print the trace as JSON')
    .addHelpText('after', '\nExample:\n  eavewright why patio.json B1')
    .action((file: string, mark: string, o: { json?: boolean }) => run(whyCommand)(file, mark, o));

  program
    .command('path')
    .description('show the chain from roof to soil through a part, with demand over capacity down, up and sideways')
    .argument('<file>', 'project file, or - for standard input')
    .argument('<mark>', 'mark as drawn, e.g. B1, P2, F1, J3, RF1')
    .option('--json', 'print the chain as JSON')
    .addHelpText('after', '\nExample:\n  eavewright path patio.json B1')
    .action((file: string, mark: string, o: { json?: boolean }) => run(pathCommand)(file, mark, o));

  program
    .command('buy')
    .description('take off, cut list, orders, prices and papers for hiring')
    .argument('<file>', 'project file, or - for standard input')
    .requiredOption('-o, --output <dir>', 'folder for buy.pdf, hire.pdf, buy.xlsx, buy.csv, prices.csv and buy.json')
    .option('--prices <csv>', 'price list to use: item, unit, price; prices.csv is one to fill in')
    .option('--invented-prices', 'made-up prices, for trying it out; every page says so')
    .option('--compare', 'also build and price the usual choices: trusses or rafters, built-up or glulam')
    .option('--json', 'list the files written as JSON')
    .addHelpText('after', '\nExample:\n  eavewright buy patio.json -o out --prices prices.csv')
    .action((file: string, o: BuyFlags) => run(buy)(file, o));

  program
    .command('size')
    .description('search beams, posts, rafters and pads for the least cost that passes every check')
    .argument('<file>', 'project file, or - for standard input')
    .option('--prices <csv>', 'price list to compare by: item, unit, price')
    .option('--invented-prices', 'made-up prices, for trying it out')
    .option('--most <n>', 'combinations worked out in full at most (400)')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', '\nExample:\n  eavewright size patio.json --prices prices.csv')
    .action((file: string, o: SizeFlags) => run(size)(file, o));

  program
    .command('start')
    .description('check and draw the first example and say where the set is')
    .option('-o, --output <dir>', 'folder for the set', 'out')
    .action((o: { output: string }) => run(start)(o));

  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (e) {
    if (e instanceof CommanderError) {
      return e.code === 'commander.helpDisplayed' || e.code === 'commander.version' ? EXIT.issuable : EXIT.badInput;
    }
    if (e instanceof UserFault) {
      io.err(`${e.message}\n`);
      return EXIT.badInput;
    }
    io.err(`eavewright met a fault of its own; nothing was written half.\n${(e as Error).stack ?? String(e)}\n`);
    return EXIT.ourFault;
  }
}
