import {
  newQuickJSWASMModuleFromVariant,
  type QuickJSContext,
  type QuickJSHandle,
} from 'quickjs-emscripten-core';
import type { RecordedDay } from './recorded-day.ts';

/** What a host may offer and the engine must not touch. */
export const hostNames = [
  'Date',
  'Intl',
  'WebAssembly',
  'console',
  'fetch',
  'global',
  'navigator',
  'performance',
  'process',
  'queueMicrotask',
  'require',
  'setInterval',
  'setTimeout',
  'structuredClone',
  'window',
] as const;

/** The language alone: no dates, no promises, no proxies, no arrays of bytes, no eval. */
const languageOnly = {
  BaseObjects: true,
  Eval: true,
  RegExp: true,
  RegExpCompiler: true,
  JSON: true,
  MapSet: true,
};

/** Every access to what belongs to a host throws, even one that asks first whether it is there. */
const traps = `
  for (const name of ${JSON.stringify(hostNames)})
    Object.defineProperty(globalThis, name, { get() { throw new Error('host: ' + name); } });
  Math.random = () => { throw new Error('host: Math.random'); };
`;

/** Walks inside: what goes in and comes out is JSON text. */
const walker = `
  let site, settings, state;
  globalThis.begin = (siteJson, settingsJson) => {
    site = JSON.parse(siteJson);
    settings = JSON.parse(settingsJson);
    state = engine.initialState();
  };
  globalThis.next = (inputJson) => {
    const stepped = engine.step(state, JSON.parse(inputJson), site, settings);
    state = stepped.state;
    return JSON.stringify(stepped);
  };
  globalThis.pass = (inputsJson) => {
    for (const input of JSON.parse(inputsJson)) state = engine.step(state, input, site, settings).state;
  };
`;

/** A small interpreter (QuickJS) that holds the engine and nothing else. */
export interface SmallHost {
  /** Runs a script. @throws Error with what the script threw. */
  run(script: string): unknown;
  begin(day: RecordedDay): void;
  /** One step. @returns state and decision as JSON text. */
  next(inputJson: string): string;
  /** Many steps of which nothing is told. */
  pass(inputsJson: string): void;
  /** Heap in use [bytes], by the interpreter's own count. It is built for 32-bit WebAssembly. */
  heapBytes(): number;
  close(): void;
}

/** @param mostHeapBytes - The interpreter is given no more; a figure that it holds to roughly. */
export async function openSmallHost(code: string, mostHeapBytes: number): Promise<SmallHost> {
  const quickJs = await newQuickJSWASMModuleFromVariant(import('@jitl/quickjs-wasmfile-release-sync'));
  const runtime = quickJs.newRuntime();
  runtime.setMemoryLimit(mostHeapBytes);
  const context = runtime.newContext({ intrinsics: languageOnly });
  const run = (script: string) => context.unwrapResult(context.evalCode(script)).consume(context.dump);
  run(traps);
  run(code);
  run(walker);
  return {
    run,
    begin: ({ site, settings }) => {
      call(context, 'begin', [JSON.stringify(site), JSON.stringify(settings)]);
    },
    next: (inputJson) => String(call(context, 'next', [inputJson])),
    pass: (inputsJson) => {
      call(context, 'pass', [inputsJson]);
    },
    heapBytes: () => {
      const usage = runtime.computeMemoryUsage().consume(context.dump) as Record<string, number>;
      return usage['memory_used_size'] ?? Number.NaN;
    },
    close: () => {
      context.dispose();
      runtime.dispose();
    },
  };
}

function call(context: QuickJSContext, name: string, texts: readonly string[]): unknown {
  const handles: QuickJSHandle[] = texts.map((text) => context.newString(text));
  const result = context
    .getProp(context.global, name)
    .consume((own) => context.callFunction(own, context.undefined, ...handles));
  for (const handle of handles) handle.dispose();
  return context.unwrapResult(result).consume(context.dump);
}
