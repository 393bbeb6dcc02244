import './no-eval.ts';
import '@fontsource-variable/encode-sans/wdth.css';
import '@fontsource-variable/source-serif-4/wght.css';
import '@fontsource-variable/source-serif-4/wght-italic.css';
import './styles/index.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { workerDeriver } from './deriver.ts';
import { httpApi } from './http.ts';
import { applyGround } from './person.ts';
import { PortsProvider } from './ports.ts';
import { workerShaper } from './shaper.ts';

const today = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

applyGround();
createRoot(document.getElementById('office')!).render(
  <StrictMode>
    <PortsProvider value={{ api: httpApi(), deriver: workerDeriver, shaper: workerShaper, today }}>
      <App />
    </PortsProvider>
  </StrictMode>,
);
