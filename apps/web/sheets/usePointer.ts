/** Pointers on the paper: one moves it or drags a part, two pinch, a press without a move asks. */
import { type RefObject, useRef } from 'react';
import { pick } from '../store/desk.js';
import { dragTo, drop } from '../store/project.js';
import { type Camera, type Point, panned, type Size, snapStep, toPaper, zoomAt } from './camera.js';
import { type Grip, gripAt, snapped } from './handles.js';
import type { Drag } from './Marks.js';

/** Reach of a pointer on the screen, pixels: fingers need more room. */
export const reachOf = (type: string): number => (type === 'mouse' ? 7 : 22);

export const pointIn = (el: Element, e: { clientX: number; clientY: number }): Point => {
  const r = el.getBoundingClientRect();
  return { x: e.clientX - r.left, y: e.clientY - r.top };
};

interface Desk {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly sheet: string;
  readonly camera: Camera | undefined;
  readonly size: Size;
  readonly grips: readonly Grip[];
  readonly picked: string | undefined;
  readonly look: (change: (c: Camera) => Camera) => void;
  readonly drag: (drag: Drag | undefined) => void;
  /** The pointer moves over the paper without being pressed. */
  readonly over: (at: Point, reach: number) => void;
  /** A press without a move: at that point of the screen and paper. */
  readonly ask: (screen: Point, paper: Point, reach: number) => void;
}

interface Press {
  readonly at: Point;
  moved: boolean;
  pinch?: number;
  readonly grip?: Grip;
}

export function usePointer(d: Desk) {
  const pointers = useRef(new Map<number, Point>());
  const pressed = useRef<Press>(undefined);
  const dragging = useRef<Drag>(undefined);

  const down = (e: React.PointerEvent): void => {
    const el = d.canvas.current;
    if (!el || !d.camera) return;
    el.setPointerCapture(e.pointerId);
    const p = pointIn(el, e);
    pointers.current.set(e.pointerId, p);
    if (pointers.current.size === 2) {
      const [a, b] = [...pointers.current.values()] as [Point, Point];
      pressed.current = { at: p, moved: true, pinch: Math.hypot(a.x - b.x, a.y - b.y) };
      return;
    }
    const g = gripAt(d.grips, toPaper(d.camera, d.size, p), reachOf(e.pointerType) / d.camera.zoom);
    // A finger drags only what it has picked before, so that moving the paper moves nothing else.
    const mine = g && (e.pointerType === 'mouse' || g.handle.mark === d.picked) ? g : undefined;
    pressed.current = { at: p, moved: false, ...(mine ? { grip: mine } : {}) };
  };

  const pinch = (press: Press, p: Point, was: Point): void => {
    const [a, b] = [...pointers.current.values()] as [Point, Point];
    const spread = Math.hypot(a.x - b.x, a.y - b.y);
    const mid = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const factor = spread / press.pinch!;
    d.look((c) => panned(zoomAt(c, d.size, mid, factor), (p.x - was.x) / 2, (p.y - was.y) / 2));
    press.pinch = spread;
  };

  const move = (e: React.PointerEvent): void => {
    const { camera, size } = d;
    const el = d.canvas.current;
    if (!el || !camera) return;
    const p = pointIn(el, e);
    const was = pointers.current.get(e.pointerId);
    if (was) pointers.current.set(e.pointerId, p);
    const press = pressed.current;
    if (!press || !was) {
      d.over(toPaper(camera, size, p), reachOf('mouse') / camera.zoom);
      return;
    }
    if (press.pinch !== undefined && pointers.current.size === 2) {
      pinch(press, p, was);
      return;
    }
    if (!press.moved && Math.hypot(p.x - press.at.x, p.y - press.at.y) < (e.pointerType === 'mouse' ? 4 : 9)) return;
    press.moved = true;
    const { grip } = press;
    if (!grip) {
      d.look((c) => panned(c, p.x - was.x, p.y - was.y));
      return;
    }
    const step = snapStep(camera.zoom * grip.view.scale, e.shiftKey);
    const by = snapped(grip, toPaper(camera, size, press.at), toPaper(camera, size, p), step);
    if (by === dragging.current?.by) return;
    dragging.current = { grip, by };
    d.drag(dragging.current);
    void dragTo(grip.handle.id, by, d.sheet);
  };

  const up = (e: React.PointerEvent): void => {
    pointers.current.delete(e.pointerId);
    const press = pressed.current;
    if (pointers.current.size > 0) return;
    pressed.current = undefined;
    const last = dragging.current;
    dragging.current = undefined;
    d.drag(undefined);
    const given = e.type !== 'pointercancel';
    if (last) {
      pick(last.grip.handle.mark);
      void drop(last.grip.handle.id, given ? last.by : 0, `${last.grip.handle.mark} moved`);
      return;
    }
    if (!press || press.moved || !d.camera || !given || !d.canvas.current) return;
    const p = pointIn(d.canvas.current, e);
    d.ask(p, toPaper(d.camera, d.size, p), reachOf(e.pointerType) / d.camera.zoom);
  };

  return { down, move, up };
}
