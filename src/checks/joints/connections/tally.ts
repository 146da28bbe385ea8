/** Uses of the limits of one part of a connection, gathered as they are worked out. */
import type { Recorder } from '../../../base/trace.js';
import { say } from '../../codes/say.js';
import { WET_REFUSED } from '../../members/design.js';
import type { Held } from './contract.js';

/** Uses of one limit after the other; the greatest counts. */
export class Tally {
  ratio = 0;
  what = '';
  outside: string | undefined;
  readonly faults: string[] = [];
  /** `help` is what would lower this use. */
  add(ratio: number | undefined, what: string, help: string, clause: string, rec?: Recorder, shown?: string): void {
    if (ratio === undefined) {
      this.outside = WET_REFUSED;
      return;
    }
    if (ratio > 0)
      rec?.step({
        symbol: 'use',
        meaning: what,
        formula: 'demand / capacity',
        substituted: shown ?? `greatest of the above, ${say(ratio)}`,
        value: ratio,
        unit: '',
        clause,
      });
    if (ratio <= this.ratio) return;
    this.ratio = ratio;
    this.what = `${what}: ${help}`;
  }
  fault(text: string): void {
    if (!this.faults.includes(text)) this.faults.push(text);
  }
  get held(): Held {
    return {
      ratio: this.ratio,
      what: this.what,
      faults: this.faults,
      ...(this.outside === undefined ? {} : { outside: this.outside }),
    };
  }
}
