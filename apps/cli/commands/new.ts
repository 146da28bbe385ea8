import { access } from 'node:fs/promises';
import { STARTER_KINDS, type StarterKind, starter } from '../../../src/checking.js';
import { UserFault, writeWhole } from '../files.js';
import type { Io } from '../io.js';

export async function create(io: Io, roof: string, o: { output?: string; force?: boolean }): Promise<number> {
  if (!(STARTER_KINDS as readonly string[]).includes(roof)) {
    throw new UserFault(`"${roof}" is not a starter; choose one of ${STARTER_KINDS.join(', ')}`);
  }
  const text = starter(roof as StarterKind);
  if (o.output === undefined) {
    io.out(text);
    return 0;
  }
  const taken = await access(o.output).then(
    () => true,
    () => false,
  );
  if (taken && !o.force) throw new UserFault(`${o.output} exists already; add --force to replace it`);
  await writeWhole(o.output, text);
  io.out(`${o.output}\n`);
  return 0;
}
