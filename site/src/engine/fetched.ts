// What lies beside the page, by its address.

export async function fetched(address: string): Promise<Response> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return answer;
}

/** A part of the engine: compiled while it comes in, where the host says what it is; from its bytes otherwise. */
export async function compiled(address: string): Promise<WebAssembly.Module> {
  const answer = await fetched(address);
  if (answer.headers.get('content-type') === 'application/wasm') return WebAssembly.compileStreaming(answer);
  return WebAssembly.compile(await answer.arrayBuffer());
}
