/**
 * Asks one question at a time, and always the newest: what was newest while one was under way is skipped but for the last.
 * After a slow answer it rests as long as that took, so that a hand that goes on moving does not fill the worker.
 */

/** ms */
const SLOW = 40;
const LONGEST_REST = 400;

export function keepLatest<Question, Answer>(
  ask: (question: Question) => Promise<Answer | undefined>,
  take: (answer: Answer, question: Question) => void,
  fail: (error: unknown) => void,
): (question: Question) => void {
  let newest: { readonly question: Question } | undefined;
  let busy = false;
  const work = async () => {
    busy = true;
    while (newest !== undefined) {
      const { question } = newest;
      newest = undefined;
      const began = performance.now();
      try {
        const answer = await ask(question);
        if (answer !== undefined) take(answer, question);
      } catch (error) {
        fail(error);
      }
      const took = performance.now() - began;
      if (took > SLOW) await new Promise((resolve) => setTimeout(resolve, Math.min(LONGEST_REST, took)));
    }
    busy = false;
  };
  return (question) => {
    newest = { question };
    if (!busy) void work();
  };
}
