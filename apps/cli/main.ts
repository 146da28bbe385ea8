/**
 * The command line. Composable and quiet: results on stdout, progress on stderr when it is a terminal, and an exit code a
 * script can trust: 0 issuable, 1 not issuable, 2 bad input, 3 our own fault.
 */
import { CommanderError } from 'commander';
import { UserFault } from './files.js';
import { EXIT, type Io } from './io.js';
import { programOf } from './program.js';

const processIo: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  progress: (text) => {
    if (process.stderr.isTTY) process.stderr.write(text);
  },
};

// Whoever reads our output may stop before its end, as `head` does: that is no fault.
process.stdout.on('error', (e: NodeJS.ErrnoException) => {
  if (e.code !== 'EPIPE') throw e;
});

export async function main(args: readonly string[], io: Io = processIo): Promise<number> {
  let code: number = EXIT.issuable;
  const program = programOf(io, (c) => {
    code = c;
  });
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
