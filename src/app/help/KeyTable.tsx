/** What keys do, place by place. */
import { HeadRow } from '#app/views/HeadRow.tsx';

const KEYS: readonly (readonly [string, string, string])[] = [
  ['anywhere', 'Ctrl Z, Ctrl Shift Z', 'undo, redo'],
  ['anywhere', 'paste', 'open the drawing or job on the clipboard'],
  ['sheet', 'arrows', 'move the plan, turn the relief (with Shift: move it)'],
  ['sheet', '+ and −, Home', 'nearer, farther, whole part'],
  ['sheet', 'T', 'turn the part over, where both faces are etched'],
  ['sheet', 'Page Up, Page Down', 'pick the next region, the one before'],
  ['sheet', 'digits, Enter', 'with a region picked: its new depth'],
  ['sheet', 'Esc', 'pick nothing'],
  ['ladder', 'up, down (Page: ten times)', 'move a level; Enter takes it, Esc leaves it'],
  ['cut line', 'arrows (Shift: ten times)', 'move an end or the whole cut'],
  ['section', 'left, right', 'read depth, thickness and stage along the cut'],
  ['clock', 'left, right', 'another minute'],
];

export function KeyTable() {
  return (
    <table>
      <HeadRow columns={['where', 'key', 'does']} />
      <tbody>
        {KEYS.map(([where, key, does]) => (
          <tr key={where + key}>
            <td>{where}</td>
            <td>{key}</td>
            <td>{does}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
