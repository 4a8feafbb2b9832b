// Where the page's own files come from: beside the page. The single offline file replaces this module by one that holds them.

/** A bundle of rules as text. */
export async function rulesText(file: string): Promise<string> {
  const address = new URL(`generated/rules/${file}`, document.baseURI).href;
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return answer.text();
}
