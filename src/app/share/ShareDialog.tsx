/** The plan as a link, as a QR code of that link, and where it is too long for either, as a file. */
import { useEffect, useRef, useState } from 'react';
import { LONGEST_FRAGMENT, OFTEN_CUT, planFragment } from '../../outputs/share-link.ts';
import { CloseButton, Dialog } from '../bar/Dialog.tsx';
import { StandingTag } from '../icons.tsx';
import { saveFile } from '../store/files.ts';
import { currentPlan } from '../store/plan.ts';
import { useTheme } from '../theme.ts';
import { type Code, codeOf, MOST_BYTES } from './qr.ts';
import './share.css';

/** The address of this page with the present plan in it; null until it is made. */
function useLink(): string | null {
  const [link, setLink] = useState<string | null>(null);
  useEffect(() => {
    let wanted = true;
    void planFragment(currentPlan()).then((fragment) => {
      if (wanted) setLink(location.origin + location.pathname + fragment);
    });
    return () => {
      wanted = false;
    };
  }, []);
  return link;
}

const inFigures = (characters: number): string => characters.toLocaleString('en');

const FileButton = () => (
  <button type="button" className="btn" onClick={saveFile}>
    Save the plan as a file
  </button>
);

function Link({ link }: { link: string }) {
  const field = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setSaid('Copied.');
    } catch {
      field.current?.select();
      setSaid('This browser does not let the page copy. The link is selected: copy it with Ctrl or Cmd C.');
    }
  };
  const share = () => {
    // Refused, or given up by the operator: the link is still there.
    navigator.share({ title: currentPlan().title, url: link }).catch(() => {});
  };
  return (
    <>
      <div className="share-link">
        <input
          ref={field}
          className="m"
          readOnly
          value={link}
          aria-label="Link to this plan"
          onFocus={({ target }) => target.select()}
        />
        <button type="button" className="btn main" onClick={() => void copy()}>
          Copy
        </button>
        {'share' in navigator && (
          <button type="button" className="btn" onClick={share}>
            Send
          </button>
        )}
      </div>
      <p className="s" role="status">
        {said || `${inFigures(link.length)} characters.`}
      </p>
    </>
  );
}

/** Side of a drawn code at most, CSS pixels; a module takes a whole number of them. */
const SIDE_PX = 480;

function Drawn({ code: { version, size, path, dense } }: { code: Code }) {
  return (
    <figure className="share-code">
      <svg
        viewBox={`0 0 ${size} ${size}`}
        width={Math.max(1, Math.floor(SIDE_PX / size)) * size}
        shapeRendering="crispEdges"
        role="img"
        aria-label={`QR code, version ${version}: the same link as in the field above`}
      >
        {/* Dark on light in every theme: few readers take the opposite. */}
        <rect width={size} height={size} fill="#fff" />
        <path d={path} fill="#000" />
      </svg>
      <figcaption className="s">
        Point the camera of a phone at it.
        {dense &&
          ' It is a dense one: hold the phone close and still. A plan with less in it makes a coarser one.'}
      </figcaption>
    </figure>
  );
}

/** The code; where eyes are used to the dark it waits to be asked for. */
function QrCode({ link }: { link: string }) {
  const [theme] = useTheme();
  const [shown, setShown] = useState(theme !== 'dim');
  const code = codeOf(link);
  if (!code)
    return (
      <p className="s">
        Too long for a QR code, which holds {inFigures(MOST_BYTES)} characters: send the link, or share the
        file.
      </p>
    );
  if (shown) return <Drawn code={code} />;
  return (
    <button type="button" className="btn" onClick={() => setShown(true)}>
      Show the QR code (white, bright)
    </button>
  );
}

const TOO_LONG = 'This plan is too long for a link, with all that its sheet and its notes hold.';
const LONG = 'A long link: many mail and chat programs cut it, and then it cannot be opened.';

function Shared({ link }: { link: string }) {
  const tooLong = link.length > LONGEST_FRAGMENT;
  return (
    <>
      {!tooLong && <Link link={link} />}
      {(tooLong || link.length > OFTEN_CUT) && (
        <>
          <StandingTag standing={tooLong ? 'stop' : 'warning'} text={tooLong ? 'No link' : 'Long link'} />
          <p>
            {tooLong ? TOO_LONG : LONG} Share the file instead. <FileButton />
          </p>
        </>
      )}
      {!tooLong && <QrCode link={link} />}
    </>
  );
}

export default function ShareDialog() {
  const link = useLink();
  return (
    <Dialog title="Share this plan" className="share">
      <p>
        The link holds the whole plan, place and notes too: who has it can read them. Nothing is stored
        anywhere; what you change afterwards needs a new link.
      </p>
      {link === null ? <p role="status">Making the link</p> : <Shared link={link} />}
      <div className="row">
        <CloseButton />
      </div>
    </Dialog>
  );
}
