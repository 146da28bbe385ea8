/** The commands, each loaded when it is asked for: what only checks starts faster without what draws. */
import { Command } from 'commander';
import type { BuyFlags } from './commands/buy.js';
import type { CompareOptions } from './commands/compare.js';
import type { DrawOptions } from './commands/draw.js';
import type { SizeFlags } from './commands/size.js';
import type { Io } from './io.js';

type Action<A extends unknown[]> = (io: Io, ...args: A) => Promise<number>;

/** The program as it stands on the command line; `done` is told the exit code of the command that ran. */
export function programOf(io: Io, done: (code: number) => void): Command {
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
  eavewright stake patio.json -o out             where the holes go: stake-out pages and points
  eavewright stages patio.json -o out            approvals, build order, a card for each inspection
  eavewright why patio.json B1                   the numbers behind beam B1, step by step
  eavewright path patio.json B1                  the chain from the roof through B1 to the soil

Exit codes: 0 issuable, 1 not issuable, 2 bad input, 3 our own fault.
This program helps prepare a submittal; it certifies nothing. The authority having jurisdiction decides.`,
    );
  const run =
    <A extends unknown[]>(load: () => Promise<Action<A>>) =>
    async (...args: A) =>
      done(await (await load())(io, ...args));

  program
    .command('new')
    .description('write a commented starter project for a chosen roof')
    .argument('<roof>', 'gable-attached, gable-free, shed-attached or shed-free')
    .option('-o, --output <file>', 'file to write; standard output when left out')
    .option('--force', 'replace the file when it exists')
    .addHelpText('after', '\nExample:\n  eavewright new shed-attached -o patio.json')
    .action((roof: string, o: { output?: string; force?: boolean }) =>
      run(async () => (await import('./commands/new.js')).create)(roof, o),
    );

  program
    .command('check')
    .description('read, place, load, analyse and check a project')
    .argument('<file>', 'project file, or - for standard input')
    .option('--json', 'print issues, results, balance and verdict as JSON')
    .option('--all', 'list passing results too')
    .addHelpText('after', '\nExample:\n  eavewright check patio.json --json | jq .issuable')
    .action((file: string, o: { json?: boolean; all?: boolean }) =>
      run(async () => (await import('./commands/check.js')).check)(file, o),
    );

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
    .option('--separate', 'also write separate/: site plan, drawings, calculations and trusses, a PDF file each')
    .option('--each', 'also write pages/<sheet>.pdf, a file a sheet')
    .option('--black', 'black line work only, without greys, in the PDF files')
    .option('--size <name>', 'sheet size in place of the project’s, e.g. "ANSI B"')
    .option('--json', 'list the files written, and what is wrong on the sheets, as JSON')
    .addHelpText(
      'after',
      `
Examples:
  eavewright draw patio.json -o out --only S-101,S-102
  eavewright draw patio.json -o out --separate   the files an office asks for one by one
  eavewright draw patio.json -o out --dxf        for a designer's drawing program: release 2007, inches

What is wrong on a sheet itself (a text on another, a string that does not add up) is listed, and the set stays preliminary.`,
    )
    .action((file: string, o: DrawOptions) => run(async () => (await import('./commands/draw.js')).draw)(file, o));

  program
    .command('review')
    .description('what offices ask of a submittal, and on which sheet this set shows it')
    .argument('<file>', 'project file, or - for standard input')
    .option('--json', 'print rows, faults of the sheets and verdict as JSON')
    .addHelpText(
      'after',
      `
Example:
  eavewright review patio.json

Rows are taken out and added under submittal.officeChecklist of the project file. Exit 1 while a row is not shown.`,
    )
    .action((file: string, o: { json?: boolean }) =>
      run(async () => (await import('./commands/review.js')).review)(file, o),
    );

  program
    .command('association')
    .description('write the packet an association’s committee wants: application, plot plan, elevations, perspectives')
    .argument('<file>', 'project file, or - for standard input')
    .requiredOption('-o, --output <dir>', 'folder for association.pdf')
    .option('--size <name>', 'sheet size; 11 by 17 in (ANSI B) when left out')
    .option('--json', 'list the files written as JSON')
    .addHelpText(
      'after',
      `
Example:
  eavewright association patio.json -o out

Colors, schedule and neighbors stand under submittal.association of the project file.`,
    )
    .action((file: string, o: { output: string; size?: string; json?: boolean }) =>
      run(async () => (await import('./commands/association.js')).association)(file, o),
    );

  program
    .command('compare')
    .description(
      'what changed between two versions: values, parts, results, sheets, approvals; clouds and answer letter',
    )
    .argument('<old>', 'project file as it was handed in')
    .argument('<new>', 'project file as it is now')
    .option('-o, --output <dir>', 'folder for revised.pdf (touched sheets, clouded) and answers.pdf, answers.md')
    .option('--comments <file>', 'reviewers’ comments and answers, in place of submittal.comments of the new file')
    .option('--size <name>', 'sheet size in place of the project’s')
    .option('--json', 'print everything as JSON')
    .addHelpText(
      'after',
      `
Example:
  eavewright compare handed-in.json patio.json -o resubmit

Each answer names a sheet of the set; one that does not is reported, and the exit code is 1.`,
    )
    .action((a: string, b: string, o: CompareOptions) =>
      run(async () => (await import('./commands/compare.js')).compareCommand)(a, b, o),
    );

  program
    .command('why')
    .description('show the steps behind the numbers of a member, joint, footing or roof')
    .argument('<file>', 'project file, or - for standard input')
    .argument('<mark>', 'mark as drawn, e.g. B1, P2, F1, J3, RF1, R1')
    .option('--json', 'print the trace as JSON')
    .addHelpText('after', '\nExample:\n  eavewright why patio.json B1')
    .action((file: string, mark: string, o: { json?: boolean }) =>
      run(async () => (await import('./commands/why.js')).whyCommand)(file, mark, o),
    );

  program
    .command('path')
    .description('show the chain from roof to soil through a part, with demand over capacity down, up and sideways')
    .argument('<file>', 'project file, or - for standard input')
    .argument('<mark>', 'mark as drawn, e.g. B1, P2, F1, J3, RF1')
    .option('--json', 'print the chain as JSON')
    .addHelpText('after', '\nExample:\n  eavewright path patio.json B1')
    .action((file: string, mark: string, o: { json?: boolean }) =>
      run(async () => (await import('./commands/path.js')).pathCommand)(file, mark, o),
    );

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
    .action((file: string, o: BuyFlags) => run(async () => (await import('./commands/buy.js')).buy)(file, o));

  program
    .command('stake')
    .description('set out the footings: scaled plan, points, strings, diagonals, levels, post lengths')
    .argument('<file>', 'project file, or - for standard input')
    .requiredOption('-o, --output <dir>', 'folder for stake.pdf, stake.csv and stake.json')
    .option('--json', 'list the files written as JSON')
    .addHelpText('after', '\nExample:\n  eavewright stake patio.json -o out')
    .action((file: string, o: { output: string; json?: boolean }) =>
      run(async () => (await import('./commands/site.js')).stake)(file, o),
    );

  program
    .command('stages')
    .description('approvals with their clock, build order, and a card for each inspection')
    .argument('<file>', 'project file, or - for standard input')
    .requiredOption('-o, --output <dir>', 'folder for stages.pdf, stages.csv and stages.json')
    .option('--today <day>', 'day for the permit clock, e.g. 2026-05-01; the clock of this machine when left out')
    .option('--approved <file>', 'the project as it was approved: tells what changed and who must be asked again')
    .option('--json', 'list the files written as JSON')
    .addHelpText('after', '\nExample:\n  eavewright stages patio.json -o out --approved approved.json')
    .action((file: string, o: { output: string; today?: string; approved?: string; json?: boolean }) =>
      run(async () => (await import('./commands/site.js')).stages)(file, o),
    );

  program
    .command('asbuilt')
    .description('adjust what was measured: true places, the bad reading, what still fits, every check again')
    .argument('<file>', 'project file with log.asBuilt, or - for standard input')
    .option('--json', 'print points, readings, findings and changed results as JSON')
    .addHelpText('after', '\nExample:\n  eavewright asbuilt patio.json --json | jq .bad')
    .action((file: string, o: { json?: boolean }) =>
      run(async () => (await import('./commands/site.js')).asBuilt)(file, o),
    );

  program
    .command('size')
    .description('search beams, posts, rafters and pads for the least cost that passes every check')
    .argument('<file>', 'project file, or - for standard input')
    .option('--prices <csv>', 'price list to compare by: item, unit, price')
    .option('--invented-prices', 'made-up prices, for trying it out')
    .option('--most <n>', 'combinations worked out in full at most (400)')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', '\nExample:\n  eavewright size patio.json --prices prices.csv')
    .action((file: string, o: SizeFlags) => run(async () => (await import('./commands/size.js')).size)(file, o));

  program
    .command('start')
    .description('check and draw the first example and say where the set is')
    .option('-o, --output <dir>', 'folder for the set', 'out')
    .action((o: { output: string }) => run(async () => (await import('./commands/start.js')).start)(o));

  program
    .command('app')
    .description('serve the browser app on this machine until stopped')
    .option('-p, --port <number>', 'port; the usual one is 4173')
    .action((o: { port?: string }) => run(async () => (await import('./commands/app.js')).app)(o));

  return program;
}
