/** A part at the size of a stamp, in the colours of the page. */

import { sceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import type { PartPicture } from '#app/state/part-picture.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';

export function PartPictureView({ picture }: { readonly picture: PartPicture }) {
  const { width, height, land, floors } = picture;
  const theme = sceneTheme(usePrefersDark());
  return (
    <svg
      className="part-picture"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      <path d={land} fill={theme.land} stroke={theme.outline} fillRule="evenodd" />
      {floors.map(({ color, path }) => {
        const { floor, mark } = lookOf(color, theme);
        return <path key={color} d={path} fill={floor} stroke={mark} strokeWidth="0.8" fillRule="evenodd" />;
      })}
    </svg>
  );
}
