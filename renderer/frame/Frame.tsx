import './frame.css';
import { PartsMirror } from '../accessibility/PartsMirror.tsx';
import { TimeScrubber } from '../stages/heat/TimeScrubber.tsx';
import { SheetPreview } from '../stages/work-map/SheetPreview.tsx';
import { Tray } from '../table/Tray.tsx';
import { CanvasHost } from './CanvasHost.tsx';
import { ContextMenu } from './ContextMenu.tsx';
import { PanelArea } from './PanelArea.tsx';
import { StageRail } from './StageRail.tsx';
import { StatusLine } from './StatusLine.tsx';
import { TopBar } from './TopBar.tsx';

/** The window with a ticket open. */
export function Frame() {
  return (
    <div className="frame">
      <TopBar />
      <StageRail />
      <CanvasHost />
      <SheetPreview />
      <TimeScrubber />
      <Tray />
      <PanelArea />
      <StatusLine />
      <ContextMenu />
      <PartsMirror />
    </div>
  );
}
