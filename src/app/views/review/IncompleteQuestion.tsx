/** Asks before a record is saved that does not tick every stage. */
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

interface IncompleteQuestionProps {
  readonly isOpen: boolean;
  readonly checked: number;
  readonly stages: number;
  readonly onSave: () => void;
  readonly onClose: () => void;
}

export function IncompleteQuestion({ isOpen, checked, stages, onSave, onClose }: IncompleteQuestionProps) {
  return (
    <ModalOverlay className="veil" isOpen={isOpen} isDismissable onOpenChange={(open) => !open && onClose()}>
      <Modal className="dialog small">
        <Dialog role="alertdialog" className="question">
          <Heading slot="title">
            {checked === 0 ? 'No stage is ticked' : `Only ${checked} of ${stages} stages are ticked`}
          </Heading>
          <p>The record would say so. It can be saved now and gone on with later.</p>
          <p className="row">
            <Button onPress={onClose}>Go on reviewing</Button>
            <Button
              className="main"
              onPress={() => {
                onClose();
                onSave();
              }}
            >
              Save it incomplete
            </Button>
          </p>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
