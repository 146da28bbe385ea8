/** The written file, version 1: one schema a part, and the JSON Schema published from them for editors. */
import { z } from 'zod';
import { basis } from './basis.js';
import { buying } from './buying.js';
import { choices } from './choices.js';
import { cover } from './cover.js';
import { house } from './house.js';
import { job } from './job.js';
import type { Json } from './leaf.js';
import { log, prices } from './log.js';
import { lot } from './lot.js';
import { patio } from './patio.js';
import { submittal } from './submittal.js';

export const PARTS = { job, basis, lot, house, patio, cover, choices, prices, buying, log, submittal };
export type PartName = keyof typeof PARTS;
export const PART_NAMES = Object.keys(PARTS) as PartName[];
export type Written = { readonly [P in PartName]: z.output<(typeof PARTS)[P]> };

/** Parts a file may leave out: they say what happened and what things cost, nothing that is designed with. */
export const OPTIONAL_PARTS: ReadonlySet<PartName> = new Set(['prices', 'buying', 'log', 'submittal']);
export const VERSION_KEY = 'eavewright';
/** Keys of the root that are no part. */
export const ROOT_KEYS: readonly string[] = ['$schema', VERSION_KEY];

/** JSON Schema (draft 2020-12) of the project file. */
export function projectJsonSchema(): Json {
  const shape = {
    $schema: z
      .string()
      .optional()
      .meta({ description: 'Where this schema is, so that editors complete and explain keys.' }),
    [VERSION_KEY]: z.literal(1).meta({ description: 'Version of the file format.', examples: [1] }),
    ...PARTS,
    prices: prices.optional(),
    buying: buying.optional(),
    log: log.optional(),
    submittal: submittal.optional(),
  };
  const schema = z.toJSONSchema(z.strictObject(shape), {
    io: 'input',
    unrepresentable: 'any',
    // zod drops the examples of leaves that transform what they read; ours are examples of what is written.
    override: ({ zodSchema, jsonSchema }) => {
      const inner = zodSchema instanceof z.ZodOptional ? zodSchema.unwrap() : zodSchema;
      const examples = z.globalRegistry.get(inner as z.ZodType)?.examples;
      if (Array.isArray(examples)) jsonSchema.examples = examples;
    },
  }) as Json;
  const { $schema, ...rest } = schema;
  return {
    $schema,
    title: 'Eavewright project, version 1',
    description:
      'A roof over a patio: lot, house, what the jurisdiction requires, and the cover. Lengths are text with units.',
    ...rest,
  };
}
