"""Kaldi's MFCC (40 mel bins, 40 cepstra, 16 kHz) on tensors, with a warped frequency axis per utterance for training."""
import math

import numpy as np
import torch

BINS, FFT, RATE, WINDOW, SHIFT = 40, 512, 16000, 400, 160
LOW, HIGH = 20.0, 7600.0
WARPS = np.linspace(0.84, 1.16, 17)
MASK = 7


def mel(frequency):
    return 1127.0 * math.log(1.0 + frequency / 700.0)


def mel_bank(warp=1.0):
    """Filter bank (bins x spectrum); warp > 1 moves the filters up, as for a shorter vocal tract."""
    edges = np.linspace(mel(LOW), mel(HIGH), BINS + 2)
    bank = np.zeros((BINS, FFT // 2 + 1), "f4")
    points = np.array([mel(min(i * RATE / FFT / warp, 8000.0)) for i in range(FFT // 2)])
    for number in range(BINS):
        left, centre, right = edges[number : number + 3]
        rising, falling = (points - left) / (centre - left), (right - points) / (right - centre)
        inside = (points > left) & (points < right)
        bank[number, : FFT // 2] = np.clip(np.where(points <= centre, rising, falling), 0, None) * inside
    return bank


class Mfcc:
    """Computes features on one device. Used by one thread at a time."""

    def __init__(self, device):
        self.plain = torch.tensor(mel_bank(), device=device)
        self.warped = torch.tensor(np.stack([mel_bank(w) for w in WARPS]), device=device)
        order = torch.arange(BINS).float()
        cosine = torch.cos(math.pi / BINS * (order[None] + 0.5) * order[:, None]) * math.sqrt(2 / BINS)
        cosine[0] = math.sqrt(1 / BINS)
        lifter = 1 + 11 * torch.sin(math.pi * order / 22)
        self.cosine = (cosine * lifter[:, None]).to(device)
        self.window = (torch.hann_window(WINDOW, periodic=False) ** 0.85).to(device)

    def __call__(self, samples, warp=None, masked=0.0):
        """samples (batch, time) in 16-bit units -> (batch, 40, frames); warp: index into WARPS per utterance; masked: share of the
        utterances in which a band of up to MASK filters is hidden behind its own mean."""
        frames = samples.unfold(1, WINDOW, SHIFT)
        frames = frames - frames.mean(-1, keepdim=True)
        frames = torch.cat([frames[..., :1] * 0.03, frames[..., 1:] - 0.97 * frames[..., :-1]], -1) * self.window
        power = torch.fft.rfft(frames, FFT).abs() ** 2
        bank = self.plain.T if warp is None else self.warped[warp].transpose(1, 2)
        energies = torch.log(torch.clamp(power @ bank, min=1.19e-7))
        return ((self.hidden(energies, masked) if masked else energies) @ self.cosine.T).transpose(1, 2)

    @staticmethod
    def hidden(energies, masked):
        rows = len(energies)
        where = lambda *shape: torch.rand(shape, device=energies.device)
        low = (where(rows, 1) * BINS).floor()
        width = (where(rows, 1) * (MASK + 1)).floor() * (where(rows, 1) < masked)
        band = torch.arange(BINS, device=energies.device)[None]
        inside = ((band >= low) & (band < low + width))[:, None]
        return torch.where(inside, energies.mean(1, keepdim=True), energies)
