/** The sheet on its canvas, or, where the browser has no WebGL, drawn flat with a note. */
import { useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { hasWebGl } from '#app/scene/has-web-gl.ts';
import { SheetCanvas } from '#app/scene/SheetCanvas.tsx';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { FlatSheet } from './FlatSheet.tsx';

interface SheetPictureProps {
  readonly picture: ScenePicture;
  readonly pose: StoreApi<ViewPose>;
}

export function SheetPicture({ picture, pose }: SheetPictureProps) {
  const [isFlat, setFlat] = useState(() => !hasWebGl());
  if (!isFlat) return <SheetCanvas picture={picture} pose={pose} onUnable={() => setFlat(true)} />;
  return (
    <>
      <FlatSheet picture={picture} pose={pose} />
      <p className="flat-note">
        {picture.view === 'relief'
          ? 'This browser has no WebGL 2: the relief can’t be shown, the sheet is drawn flat.'
          : 'This browser has no WebGL 2: the sheet is drawn flat. All but the relief works.'}
      </p>
    </>
  );
}
