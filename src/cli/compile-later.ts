import { setFlagsFromString } from 'node:v8';

/** The runtime whose flag this is, and on which it was measured; a flag that another doesn't know would be complained of. */
const MEASURED_NODE = /^20\./;

/** Eight times the usual: bytes of bytecode that a function runs between two looks at whether to compile it. */
const INTERRUPT_BUDGET_BYTES = 8 * 67_584;

/**
 * For a process that gives one answer and ends. At its usual pace the runtime compiles much that never pays back within a
 * second, on the core that the answer needs. Results are the same.
 */
export function compileLater(): void {
  if (MEASURED_NODE.test(process.versions.node)) {
    setFlagsFromString(`--interrupt-budget=${INTERRUPT_BUDGET_BYTES}`);
  }
}
