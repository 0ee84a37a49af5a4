/** Opens an address in the browser that the system names. A machine without one goes on: the address is printed. */
import { spawn } from 'node:child_process';

export function openBrowser(address: string): void {
  const [command, ...before] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '""']
        : ['xdg-open'];
  if (command === undefined) return;
  const opening = spawn(command, [...before, address], { stdio: 'ignore', detached: true });
  opening.once('error', () => undefined);
  opening.unref();
}
