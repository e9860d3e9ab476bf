import { HtmlValidate } from 'html-validate';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  // `<!doctype html>` in lower case is as valid, and integrity guards files of other hosts, of which there are none.
  rules: { 'doctype-style': 'off', 'require-sri': 'off' },
});

/** What is no valid HTML in a page, by line. */
export async function faultsOf(page: string): Promise<readonly string[]> {
  const { results } = await validator.validateString(page);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
  );
}
