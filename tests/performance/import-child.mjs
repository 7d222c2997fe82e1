// One import in a process of its own, through the command line's own code, so that its peak memory is its own. Prints one line of JSON.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const [bundle, output, ...paths] = process.argv.slice(2);
const { importCommand } = await import(pathToFileURL(bundle).href);

/** The highest resident size so far, MB. The system's usual counter begins with that of the process that started this one. */
function peakMb() {
  try {
    return Number(/VmHWM:\s*(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]) / 1024;
  } catch {
    return process.resourceUsage().maxRSS / 1024;
  }
}

const idleMb = peakMb();
const start = performance.now();
const outcome = await importCommand([...paths, '-o', output], {});
const seconds = (performance.now() - start) / 1000;
console.log(JSON.stringify({ outcome, seconds, idleMb, peakMb: peakMb() }));
