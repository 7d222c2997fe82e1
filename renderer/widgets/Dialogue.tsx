import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { frameWords } from '../../shared-types/words/window/frame.ts';
import { IconButton } from './Buttons.tsx';
import './overlays.css';

type DialogueProps = {
  title: string;
  size?: 'wide' | 'widest';
  onClose: () => void;
  footer?: ReactNode;
  children: ReactNode;
};

/** A sheet over the window; Esc and a press outside close it. */
export function Dialogue({ title, size, onClose, footer, children }: DialogueProps) {
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(open) => !open && onClose()}>
      <Modal className="modal">
        <Dialog className={`dialog ${size ?? ''}`}>
          <header>
            <Heading slot="title" level={2}>
              {title}
            </Heading>
            <IconButton icon={X} label={frameWords.close} onPress={onClose} small />
          </header>
          <div className="content scrolls">{children}</div>
          {footer && <footer>{footer}</footer>}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
