import type { Trade } from './model.js';
import { concrete } from './trades/concrete.js';
import { finish } from './trades/finish.js';
import { framing } from './trades/framing.js';
import { roofing } from './trades/roofing.js';

export const TRADES = { concrete, framing, roofing, finish } as const satisfies Record<string, Trade>;
export type TradeName = keyof typeof TRADES;
