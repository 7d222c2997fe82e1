import { createRoot } from 'react-dom/client';
import { frameWords } from '../shared-types/words/window/frame.ts';
import { connectBackend } from './backend/connect.ts';
import { Root } from './frame/Root.tsx';
import { createApp } from './state/app.ts';
import './styles/fonts.ts';
import './styles/tokens.css';
import './styles/base.css';

const host = document.getElementById('window');
if (!host) throw new Error('The page has no place for the window.');

const backend = await connectBackend();
const app = createApp(backend);
backend.onClose(() => app.notify('problem', frameWords.connectionLost, frameWords.connectionText));
createRoot(host).render(<Root app={app} />);
