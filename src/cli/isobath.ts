/** The program `isobath`: nothing but the process around the command line. */

// What the build has not compiled is kept between runs where Node can (22.1 on); it counts only for what is imported after this.
const modules = process.getBuiltinModule('node:module');
if ('enableCompileCache' in modules) (modules.enableCompileCache as () => void)();

async function run(): Promise<void> {
  const { runCommandLine } = await import('./run-command-line.ts');
  const { processTerminal } = await import('./terminal.ts');
  process.exitCode = await runCommandLine(process.argv.slice(2), processTerminal());
}

void run();
