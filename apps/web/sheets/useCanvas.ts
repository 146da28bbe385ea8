/**
 * Canvas that follows its box and the device's pixels, and paints once a frame at most. `blank` tells that nothing on it can be
 * kept: it was made, resized, lost, or its lettering has just arrived.
 */
import { type RefObject, useCallback, useEffect, useRef, useState } from 'react';
import type { Size } from './camera.js';

export function useCanvas(
  ref: RefObject<HTMLCanvasElement | null>,
  draw: (ctx: CanvasRenderingContext2D, size: Size, dpr: number, blank: boolean) => void,
) {
  const [size, setSize] = useState<Size>({ w: 0, h: 0 });
  const latest = useRef(draw);
  latest.current = draw;
  const asked = useRef(0);
  const now = useRef(size);
  const blank = useRef(true);

  const request = useCallback(() => {
    if (asked.current) return;
    asked.current = requestAnimationFrame(() => {
      asked.current = 0;
      const canvas = ref.current;
      const ctx = canvas?.getContext('2d', { alpha: true });
      if (!canvas || !ctx || now.current.w === 0) return;
      latest.current(ctx, now.current, Math.min(2, devicePixelRatio), blank.current);
      blank.current = false;
    });
  }, [ref]);

  useEffect(() => {
    const canvas = ref.current;
    const box = canvas?.parentElement;
    if (!canvas || !box) return;
    const anew = (): void => {
      blank.current = true;
      request();
    };
    const watch = new ResizeObserver(() => {
      const next = { w: box.clientWidth, h: box.clientHeight };
      const dpr = Math.min(2, devicePixelRatio);
      canvas.width = Math.round(next.w * dpr);
      canvas.height = Math.round(next.h * dpr);
      now.current = next;
      setSize(next);
      anew();
    });
    watch.observe(box);
    // Lettering arrives after the first frame: paint once more with it.
    addEventListener('lettered', anew);
    canvas.addEventListener('contextrestored', anew);
    return () => {
      watch.disconnect();
      removeEventListener('lettered', anew);
      canvas.removeEventListener('contextrestored', anew);
    };
  }, [ref, request]);

  return { size, request };
}

/** True while the system or the owner asks for a dark screen. */
export function useDark(): boolean {
  const query = matchMedia('(prefers-color-scheme: dark)');
  const read = (): boolean => {
    const wish = document.documentElement.dataset.theme;
    return wish === 'dark' || (wish !== 'light' && query.matches);
  };
  const [dark, setDark] = useState(read);
  useEffect(() => {
    const again = (): void => setDark(read());
    query.addEventListener('change', again);
    const watch = new MutationObserver(again);
    watch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    return () => {
      query.removeEventListener('change', again);
      watch.disconnect();
    };
  });
  return dark;
}
