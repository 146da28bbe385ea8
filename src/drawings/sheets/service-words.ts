/** Words about the electric service, as the lot has it: overhead, underground, or not entered. */
import type { Project } from '../../project/model.js';

/** Whether wires may hang over the yard: any drawn or listed, or no electric line entered at all. */
export function overheadService({ lot }: Project): boolean {
  const electric = lot.utilities.filter((u) => u.kind === 'electric');
  return electric.length === 0 || electric.some((u) => u.overhead) || lot.items.some((i) => i.kind === 'service-drop');
}

/** What lifted things are kept clear of: `the service drop`, or `any wire overhead` where the service lies in the ground. */
export const clearOfWires = (project: Project): string =>
  overheadService(project) ? 'the service drop' : 'any wire overhead (the house’s own service is underground)';
