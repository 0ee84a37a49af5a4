/**
 * What is slow to draw, drawn when the view rests and when it changes, and kept as a picture; while the view moves, that moves with it.
 * What lies over it is drawn each time, and has to be quick.
 */
import { useFrame, useThree } from '@react-three/fiber';
import { type ReactNode, useCallback, useEffect, useMemo, useRef } from 'react';
import type { Group, Scene } from 'three';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { KeptPictures } from './kept-pictures.ts';

export interface SlowProps {
  /** To be called when another picture is wanted; `isOther` where what was kept is not true any more. */
  readonly onChange: (isOther: boolean) => void;
}

interface MovedPictureProps {
  readonly pose: StoreApi<ViewPose>;
  readonly slow: (props: SlowProps) => ReactNode;
  readonly over: ReactNode;
}

export function MovedPicture({ pose, slow, over }: MovedPictureProps) {
  const invalidate = useThree((state) => state.invalidate);
  const [slowGroup, overGroup] = [useRef<Group>(null), useRef<Group>(null)];
  const kept = useMemo(() => new KeptPictures(), []);
  useEffect(() => () => kept.dispose(), [kept]);
  const isDue = useRef(true);
  const onChange = useCallback(
    (isOther: boolean) => {
      if (isOther) kept.forget();
      isDue.current = true;
      invalidate();
    },
    [kept, invalidate],
  );
  useFrame(({ gl, scene, camera, size }) => {
    const [slowly, quickly] = [slowGroup.current, overGroup.current];
    if (slowly === null || quickly === null) return;
    const wasDue = isDue.current;
    isDue.current = false;
    slowly.visible = wasDue;
    quickly.visible = !wasDue;
    kept.group.visible = !wasDue;
    gl.render(scene, camera);
    if (!wasDue) return;
    kept.keep(gl, pose.getState(), size);
    slowly.visible = false;
    quickly.visible = true;
    overDrawn(scene, () => gl.render(scene, camera), gl);
  }, 1);
  return (
    <>
      <primitive object={kept.group} />
      <group ref={slowGroup}>{slow({ onChange })}</group>
      <group ref={overGroup}>{over}</group>
    </>
  );
}

/** Draws over what has been drawn. */
function overDrawn(scene: Scene, draw: () => void, renderer: { autoClear: boolean }): void {
  const { background } = scene;
  scene.background = null;
  renderer.autoClear = false;
  draw();
  renderer.autoClear = true;
  scene.background = background;
}
