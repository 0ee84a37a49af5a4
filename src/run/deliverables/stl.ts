/** The etched part as a solid. */
import { solidTolerance } from '#handoff/solid/etched-solid.ts';
import { stlPieces } from '#handoff/solid/stl-file.ts';
import { movedSolid, type Writer } from '#run/handoff-files.ts';

export const write: Writer<'stl'> = ({ kit, solid, planHash, origin }) => {
  const mesh = movedSolid(solid, origin);
  const { x, y } = mesh.origin;
  const counted = x === 0 && y === 0 ? '' : `, counted from (${x}, ${y})`;
  const what = `the etched part as a solid, mm, within ${solidTolerance(kit())} mm${counted}`;
  return [{ name: 'etched-part.stl', what, bytes: { pieces: () => stlPieces(mesh, planHash) } }];
};
