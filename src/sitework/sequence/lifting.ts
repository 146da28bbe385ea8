/** What a piece weighs and how it gets up. */
import type { Member } from '../../structure/model.js';

/**
 * What one person lifts at most under the best conditions, lb: the load constant of the NIOSH lifting equation, read on a
 * page of OSHA. A piece held overhead or far out is worth less, so this is the most, not a promise.
 */
export const ONE_PERSON = 51;
export const ONE_PERSON_SOURCE = 'NIOSH lifting equation, 51 lb under ideal conditions, as quoted by OSHA';
/** More people than this cannot lift one piece in step. Common practice, no source. */
export const MOST_HANDS = 4;
/** A truss this long is set with a machine or a wall jack: hands cannot keep it plumb. Common practice, no source. */
export const LONG_TRUSS = 20 * 12;

export interface Lift {
  readonly pounds: number;
  readonly people: number;
  readonly machine: boolean;
  readonly words: string;
}

/** Weight from the sections' own densities; a truss weighs what its order says. */
export function weightOf(m: Member): number {
  return m.truss ? m.truss.weight : m.section.weight * m.length;
}

export function liftOf(m: Member): Lift {
  const pounds = weightOf(m);
  const people = Math.max(1, Math.ceil(pounds / ONE_PERSON));
  const machine = people > MOST_HANDS || (m.truss !== undefined && m.truss.span > LONG_TRUSS);
  const hands = people === 1 ? 'one person' : `${people} people`;
  return { pounds, people, machine, words: machine ? 'lift or crane' : hands };
}
