/** Keys on the sheet; the start of a figure goes to the field for the depth of what is picked. */

import { type KeyboardEvent, type RefObject, useCallback } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { figureMeaning } from '#app/state/figure-meaning.ts';
import { focusDepth } from '#app/views/requirements/focus-depth.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { sheetKey } from './sheet-keys.ts';

interface KeyPlace {
  readonly pose: StoreApi<ViewPose>;
  readonly size: RefObject<Size>;
  readonly fitAll: () => void;
}

const START_OF_FIGURE = /^[\d.,]$/;

export function useSheetKeys({ pose, size, fitAll }: KeyPlace) {
  const { store, actions, layout } = useWorkbench();
  return useCallback(
    (event: KeyboardEvent<HTMLElement>) => {
      const host = { store, actions, pose, size: size.current, fitAll };
      if (sheetKey(event.nativeEvent, host)) event.preventDefault();
      else if (START_OF_FIGURE.test(event.key) && store.getState().session.selection.length > 0)
        focusDepth(layout, figureMeaning(store.getState()));
    },
    [store, actions, layout, pose, size, fitAll],
  );
}
