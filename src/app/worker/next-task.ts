/** Ends the task under way and goes on in the next, so that typing and painting get their turn between two pieces of work. */
export function nextTask(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
