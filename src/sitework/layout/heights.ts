/** Tops of piers from the benchmark, and the length of every post by its own pier. */
import type { Structure } from '../../structure/model.js';
import type { PierTop, PostCut } from './model.js';

interface Stand {
  readonly post: Structure['members'][number];
  readonly footing: Structure['footings'][number];
}

const stands = (structure: Structure): readonly Stand[] =>
  structure.footings.flatMap((footing) => {
    const tie = structure.joints.find((j) => j.kind === 'post-to-footing' && j.ties[1]?.part === footing.id);
    const post = structure.members.find((m) => m.id === tie?.ties[0]?.part);
    return post ? [{ post, footing }] : [];
  });

export const pierTops = (structure: Structure): readonly PierTop[] =>
  stands(structure).map(({ post, footing }) => ({
    footing: footing.mark,
    post: post.mark,
    surface: footing.surface,
    top: footing.top,
    bottom: footing.bottom,
    depth: footing.surface - footing.bottom,
    path: footing.path,
  }));

/** Underside of what it carries, less what it stands on, less the gap of its base. */
export const postCuts = (structure: Structure): readonly PostCut[] =>
  stands(structure).map(({ post, footing }) => {
    const standoff = footing.embedded ? 0 : post.start.z - footing.top;
    return {
      post: post.mark,
      section: post.section.label,
      footing: footing.mark,
      underside: post.end.z,
      bears: post.start.z - standoff,
      standoff,
      length: post.end.z - post.start.z,
      path: post.path,
    };
  });
