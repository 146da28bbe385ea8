/**
 * Reverse Cuthill–McKee order of a graph: neighbours get near numbers, so that a row of posts gives a narrow matrix
 * however its nodes were numbered. Returns the nodes in their new order. Parts that do not hang together follow one
 * another.
 */
export function reverseCuthillMcKee(count: number, edges: Iterable<readonly [number, number]>): Int32Array {
  const graph = neighbours(count, edges);
  const order = new Int32Array(count);
  const seen = new Uint8Array(count);
  let filled = 0;
  for (let node = 0; node < count; node++) {
    if (seen[node]) continue;
    const { queue } = sweep(graph, farEnd(graph, node));
    for (const v of queue) {
      seen[v] = 1;
      order[filled++] = v;
    }
  }
  return order.reverse();
}

type Graph = readonly (readonly number[])[];

function neighbours(count: number, edges: Iterable<readonly [number, number]>): Graph {
  const graph: number[][] = Array.from({ length: count }, () => []);
  for (const [a, b] of edges) {
    if (a === b || graph[a]!.includes(b)) continue;
    graph[a]!.push(b);
    graph[b]!.push(a);
  }
  // Few neighbours first, then by number: the order is the same on every run and every engine.
  const degree = graph.map((g) => g.length);
  for (const list of graph) list.sort((a, b) => degree[a]! - degree[b]! || a - b);
  return graph;
}

/** Breadth-first sweep from a node: all it reaches, in order, and how deep the levels go. */
function sweep(graph: Graph, root: number): { readonly queue: readonly number[]; readonly depth: number } {
  const level = new Map<number, number>([[root, 0]]);
  const queue = [root];
  for (let head = 0; head < queue.length; head++) {
    const v = queue[head]!;
    for (const w of graph[v]!) {
      if (level.has(w)) continue;
      level.set(w, level.get(v)! + 1);
      queue.push(w);
    }
  }
  return { queue, depth: level.get(queue.at(-1)!)! };
}

/** A node at one end of the part (George and Liu's pseudo-peripheral node): sweeps run until none is longer. */
function farEnd(graph: Graph, start: number): number {
  let root = start;
  let { queue, depth } = sweep(graph, root);
  for (;;) {
    const last = queue.at(-1)!;
    const next = sweep(graph, last);
    if (next.depth <= depth) return root;
    root = last;
    ({ queue, depth } = next);
  }
}
