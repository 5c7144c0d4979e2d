/** A test frame is dropped or picked here; what it offers is taken one by one. */
import { type RefObject, useEffect, useRef, useState } from 'react';
import { enterAll } from '../fields/entry.ts';
import { takeFrame, useFrame } from '../frame/frameStore.ts';
import { isTaken, type Offer, offersOf } from '../frame/offers.ts';
import type { TestFrame } from '../frame/testFrame.ts';
import { endGesture, usePlan } from '../store/plan.ts';
import { OfferLine, Refusal } from './parts.tsx';

const isPlanFile = (file: File): boolean => /\.json$/i.test(file.name);

/** The whole section takes a photograph that falls on it; a plan file goes on to the page. */
function useSectionDrop(inside: RefObject<HTMLElement | null>): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const body = inside.current?.closest<HTMLElement>('.body');
    if (!body) return;
    const onOver = (event: DragEvent) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (!body.contains(event.relatedTarget as Node | null)) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (!file || isPlanFile(file)) return;
      event.preventDefault();
      event.stopPropagation();
      void takeFrame(file);
    };
    body.addEventListener('dragover', onOver);
    body.addEventListener('dragleave', onLeave);
    body.addEventListener('drop', onDrop);
    return () => {
      body.removeEventListener('dragover', onOver);
      body.removeEventListener('dragleave', onLeave);
      body.removeEventListener('drop', onDrop);
    };
  }, [inside]);
  return over;
}

function OfferRow({ offer }: { offer: Offer }) {
  const taken = usePlan((plan) => isTaken(offer, plan));
  const [refused, setRefused] = useState<string | null>(null);
  return (
    <li>
      <OfferLine
        text={
          <span>
            <b>{offer.title}</b> {offer.text}
            {offer.note !== null && <span className="s note">{offer.note}</span>}
          </span>
        }
        action={`Use it: ${offer.title}`}
        taken={taken}
        onTake={() => {
          endGesture();
          setRefused(enterAll(offer.edits));
        }}
      />
      <Refusal text={refused} />
    </li>
  );
}

function Offers({ frame }: { frame: TestFrame }) {
  const plan = usePlan((present) => present);
  const offers = offersOf(frame, plan);
  return (
    <>
      <p className="s" role="status">
        {frame.fileName}
        {offers.length === 1 && ' has no EXIF that could be used: its size is all it says.'}
      </p>
      <ul className="plain">
        {offers.map((offer) => (
          <OfferRow key={offer.id} offer={offer} />
        ))}
      </ul>
    </>
  );
}

export function TestFrameDrop() {
  const input = useRef<HTMLInputElement>(null);
  const state = useFrame();
  const over = useSectionDrop(input);
  return (
    <div className="w2 frame-drop">
      <button
        id="test-frame"
        type="button"
        className={`drop${over ? ' over' : ''}`}
        onClick={() => input.current?.click()}
      >
        <b>Test frame</b>
        <span className="s">
          Drop a photograph anywhere in this section, or press here to pick one. It is read on this machine
          and goes nowhere.
        </span>
      </button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label="Test frame"
        accept="image/*,.nef,.nrw,.cr2,.arw,.dng,.pef,.orf,.rw2,.srw,.3fr,.iiq,.tif,.tiff,.heic"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) void takeFrame(file);
          // The same file may be picked again.
          event.target.value = '';
        }}
      />
      {state && 'reading' in state && (
        <p className="s" role="status">
          Reading {state.reading}.
        </p>
      )}
      {state && 'frame' in state && <Offers frame={state.frame} />}
      <Refusal text={state && 'error' in state ? state.error : null} />
    </div>
  );
}
