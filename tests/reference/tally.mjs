// Counts what holds and what does not, and ends as every check here does: 'N passed, N failed', exit code 1 on failure.

let passed = 0;
let failed = 0;

export function check(good, what) {
  if (good) passed += 1;
  else {
    failed += 1;
    console.log(`failed: ${what}`);
  }
}

export function end() {
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed ? 1 : 0);
}
