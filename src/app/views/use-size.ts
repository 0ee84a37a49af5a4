/** The size of an element as it is laid out, in CSS pixels. */
import { type RefObject, useEffect, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function useSize(ref: RefObject<HTMLElement | null>): Size | undefined {
  const [size, setSize] = useState<Size>();
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      setSize({ width: element.clientWidth, height: element.clientHeight });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
