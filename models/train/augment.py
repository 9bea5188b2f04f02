"""Batches of spoilt audio for training: speed, voice warp, rooms, noises, babble, channels and levels, all drawn at random on one device."""
import math

import torch

from features import RATE, WARPS

LONGEST_REVERB = 0.6
ROOM_SHARE = 0.45
HARD_CUT = 0.35
ECHO_SHARE = 0.5
NOISY_DECIBELS = -4, 17
TALK_DECIBELS = 4, 22
TALKERS = 1, 8


def uniform(shape, low, high, device):
    return torch.rand(shape, device=device) * (high - low) + low


class Clips:
    """All training audio in one long tensor. Immutable."""

    def __init__(self, audio, device):
        self.audio = audio.to(device)
        self.device = device

    def read(self, offsets, lengths, speeds, starts, count):
        """Lay each clip (offset, length in samples) at ``starts`` into a row of ``count`` samples, played at ``speeds``."""
        time = torch.arange(count, device=self.device)[None] - starts[:, None]
        position = time * speeds[:, None]
        inside = (time >= 0) & (position < lengths[:, None] - 1)
        position = position.clamp(min=0)
        whole = position.floor()
        share = (position - whole).float()
        index = (offsets[:, None] + whole.long()).clamp(max=len(self.audio) - 2)
        left, right = self.audio[index].float(), self.audio[index + 1].float()
        return (left + (right - left) * share) * inside

    def anywhere(self, rows, count):
        offsets = torch.randint(0, max(1, len(self.audio) - 2 * count), (rows,), device=self.device)
        speeds = uniform((rows,), 0.85, 1.2, self.device)
        return self.read(offsets, torch.full((rows,), 2 * count, device=self.device), speeds, torch.zeros(rows, device=self.device), count)


def scaled(x):
    return x / (x.pow(2).mean(1, keepdim=True).sqrt() + 1e-6)


def through(sound, response):
    """Each row of a sound as it comes out of what answers an impulse with its row of ``response``, no longer than before."""
    count = sound.shape[1]
    size = count + response.shape[1]
    return torch.fft.irfft(torch.fft.rfft(sound, size) * torch.fft.rfft(response, size), size)[:, :count]


def joined(points, count):
    """Straight lines from point to point of each row (rows, 1, points), ``count`` samples long."""
    return torch.nn.functional.interpolate(points, size=count, mode="linear", align_corners=True)[:, 0]


def tail_of_room(decay):
    """What a room answers an impulse with: noise that falls by 60 dB in ``decay`` seconds (rows, 1)."""
    length = int(LONGEST_REVERB * RATE)
    time = torch.arange(length, device=decay.device)[None] / RATE
    return torch.randn(len(decay), length, device=decay.device) * torch.exp(-6.9 * time / decay)


class Noises:
    """Makers of unit-power noise rows (rows, count). Used by one thread at a time."""

    def __init__(self, clips, device, recordings=None):
        self.clips, self.device, self.recordings = clips, device, recordings

    def coloured(self, rows, count):
        spectrum = torch.fft.rfft(torch.randn(rows, count, device=self.device))
        frequency = torch.arange(spectrum.shape[1], device=self.device).clamp(min=1).float()
        return scaled(torch.fft.irfft(spectrum * frequency[None] ** (-uniform((rows, 1), -0.5, 1.2, self.device)), count))

    def swelling(self, rows, count):
        envelope = joined(uniform((rows, 1, max(3, count // 6000)), 0.05, 1.0, self.device) ** 2, count)
        return scaled(self.coloured(rows, count) * envelope)

    def humming(self, rows, count):
        time = torch.arange(count, device=self.device)[None] / RATE
        base = uniform((rows, 1), 45, 400, self.device)
        tone = sum(torch.rand(rows, 1, device=self.device) / n * torch.sin(2 * math.pi * base * n * time + 6 * torch.rand(rows, 1, device=self.device)) for n in range(1, 9))
        return scaled(scaled(tone) + uniform((rows, 1), 0.2, 1.5, self.device) * self.coloured(rows, count))

    def clatter(self, rows, count):
        """Knocks: sparse impulses, each through a few decaying resonances."""
        rate = uniform((rows, 1), 0.5, 8, self.device) / RATE
        hits = (torch.rand(rows, count, device=self.device) < rate) * torch.randn(rows, count, device=self.device)
        length = RATE // 4
        time = torch.arange(length, device=self.device)[None] / RATE
        ring = torch.randn(rows, length, device=self.device) * torch.exp(-time * uniform((rows, 1), 100, 600, self.device))
        for _ in range(5):
            tone = torch.sin(2 * math.pi * 10 ** uniform((rows, 1), 2.4, 3.8, self.device) * time)
            ring = ring + torch.rand(rows, 1, device=self.device) * tone * torch.exp(-time * uniform((rows, 1), 15, 150, self.device))
        sound = through(hits, ring)
        return scaled(sound + 1e-3 * torch.randn_like(sound))

    def splashing(self, rows, count):
        """Running water, frying: so many short drops that they melt together, now more, now fewer."""
        rate = uniform((rows, 1), 1.7, 3.6, self.device)
        dense = joined(uniform((rows, 1, max(3, count // 4000)), 0.3, 1.0, self.device), count)
        drops = (torch.rand(rows, count, device=self.device) < dense * 10**rate / RATE) * torch.randn(2, rows, count, device=self.device).prod(0)
        length = RATE // 50
        time = torch.arange(length, device=self.device)[None] / RATE
        ring = torch.randn(rows, length, device=self.device) * torch.exp(-time * uniform((rows, 1), 500, 4000, self.device))
        return scaled(through(drops, ring) + uniform((rows, 1), 0.01, 0.3, self.device) * self.coloured(rows, count))

    def recorded(self, rows, count):
        """Storm, wind, traffic: recordings, each at a speed of its own."""
        return scaled(self.recordings.anywhere(rows, count))

    def babble(self, rows, count):
        """People who talk by turns and at once: each pauses half of the time, so now and then one of them is heard alone."""
        voices = int(torch.randint(TALKERS[0], TALKERS[1] + 1, (1,)))
        return scaled(sum(self.talker(rows, count) * uniform((rows, 1), 0.3, 1, self.device) for _ in range(voices)))

    def talker(self, rows, count):
        turns = joined(uniform((rows, 1, max(3, count // 8000)), 0, 1, self.device), count)
        return scaled(self.clips.anywhere(rows, count)) * ((turns - 0.4) * 5).clamp(0, 1)

    def mixture(self, rows, count):
        """Every row gets one or two kinds, and which rows have talk among them. Only what a row gets is made."""
        lasting = (self.coloured, self.swelling, self.humming, self.splashing, *([self.recorded] if self.recordings else []))
        makers = (*lasting, self.clatter, self.babble)
        shares = torch.zeros(rows, len(makers), device=self.device)
        row = torch.arange(rows, device=self.device)
        room = torch.rand(rows, device=self.device) < ROOM_SHARE
        any_first, any_second = (torch.randint(0, len(makers), (rows,), device=self.device) for _ in range(2))
        talk, steady = len(makers) - 1, torch.randint(0, len(lasting), (rows,), device=self.device)
        weight = (torch.rand(rows, device=self.device) < 0.4) * torch.rand(rows, device=self.device)
        shares[row, torch.where(room, steady, any_second)] = torch.where(room, uniform((rows,), 0.1, 1.5, self.device), weight)
        shares[row, torch.where(room, talk, any_first)] = 1.0
        total = torch.zeros(rows, count, device=self.device)
        for kind, maker in enumerate(makers):
            chosen = shares[:, kind].nonzero()[:, 0]
            if len(chosen):
                total[chosen] += shares[chosen, kind, None] * maker(len(chosen), count)
        return self.elsewhere(total), shares[:, talk, None] > 0

    def elsewhere(self, noise):
        """As it comes from across the room, through a door, out of a tap: half of the rows with an echo, all with a colour of their own."""
        rows, count = noise.shape
        echo = torch.rand(rows, device=self.device) < ECHO_SHARE
        if echo.any():
            response = tail_of_room(uniform((int(echo.sum()), 1), 0.1, 0.9, self.device))
            noise = noise.index_put((echo.nonzero()[:, 0],), scaled(through(noise[echo], response)))
        spectrum = torch.fft.rfft(noise)
        octave = torch.log2(torch.linspace(0, RATE / 2, spectrum.shape[1], device=self.device).clamp(min=60) / 60)[None]
        colour = sum(uniform((rows, 1), -0.5, 0.5, self.device) * torch.cos(octave / 7 * math.pi * n + uniform((rows, 1), 0, 6.3, self.device)) for n in range(1, 6))
        return scaled(torch.fft.irfft(spectrum * torch.exp(colour), count))


class Spoiler:
    """Turns clean rows into what a microphone in a busy room hears. Used by one thread at a time."""

    def __init__(self, noises, device):
        self.noises, self.device = noises, device

    def __call__(self, speech, active, spans, quiet_share, gated_share, silent=None):
        """speech (rows, count), active: samples of speech a row; spans (rows, 2): where its speech begins and ends; silent: rows whose
        speech is taken away; gated_share: of the rows, how many are silenced around their speech."""
        rows, count = speech.shape
        speech = speech / (speech.pow(2).sum(1, keepdim=True) / active[:, None]).sqrt().clamp(min=1)
        speech = self.reverberate(speech)
        if silent is not None:
            speech = speech * ~silent[:, None]
        quiet = torch.rand(rows, 1, device=self.device) < quiet_share
        noise, talk = self.noises.mixture(rows, count)
        noisy = torch.where(talk, uniform((rows, 1), *TALK_DECIBELS, self.device), uniform((rows, 1), *NOISY_DECIBELS, self.device))
        decibels = torch.where(quiet, uniform((rows, 1), 25, 90, self.device), noisy)
        floor = torch.where(quiet, uniform((rows, 1), 30, 100, self.device), uniform((rows, 1), 20, 70, self.device))
        sound = speech + noise * 10 ** (-decibels / 20)
        sound = sound + self.noises.coloured(rows, count) * 10 ** (-floor / 20)
        sound = self.channel(sound)
        peak = sound.abs().amax(1, keepdim=True) + 1e-6
        hard = torch.rand(rows, 1, device=self.device) < 0.08
        clipped = torch.clamp(sound / peak * uniform((rows, 1), 1, 4, self.device), -1, 1)
        sound = torch.where(hard, clipped, sound / peak) * 10 ** uniform((rows, 1), 2.5, 4.4, self.device)
        return self.gated(sound, spans, gated_share)

    def gated(self, sound, spans, share):
        """Some rows are digitally silent around their speech, as where a sound card closes a gate or a recording was cut, in some of them
        a little too close; all get the faint noise that is under every sound: of some four steps in those rows,
        weaker or stronger in the others."""
        rows, count = sound.shape
        time = torch.arange(count, device=self.device)[None]
        hard = torch.rand(rows, 2, device=self.device) < HARD_CUT
        room = torch.where(hard, uniform((rows, 2), -0.03, 0.02, self.device), uniform((rows, 2), 0, 0.65, self.device) ** 2) * RATE
        outside = (time < spans[:, :1] - room[:, :1]) | (time > spans[:, 1:] + room[:, 1:])
        gate = torch.rand(rows, 1, device=self.device) < share
        floor = torch.where(gate, uniform((rows, 1), 1.5, 5.5, self.device), uniform((rows, 1), 0.3, 6, self.device))
        return sound * ~(outside & gate) + torch.randn_like(sound) * floor

    def reverberate(self, speech):
        rows = len(speech)
        tail = tail_of_room(uniform((rows, 1), 0.05, 0.7, self.device))
        strength = 10 ** (-uniform((rows, 1), 0, 20, self.device) / 20)
        tail = tail / tail.pow(2).sum(1, keepdim=True).sqrt() * strength * (torch.rand(rows, 1, device=self.device) < 0.5)
        tail[:, : int(0.002 * RATE)] = 0
        tail[:, 0] = 1
        return through(speech, tail)

    def channel(self, sound):
        rows, count = sound.shape
        spectrum = torch.fft.rfft(sound)
        frequency = torch.linspace(0, RATE / 2, spectrum.shape[1], device=self.device)[None]
        narrow = torch.rand(rows, 1, device=self.device) < 0.3
        high = torch.where(narrow, uniform((rows, 1), 3300, 7000, self.device), torch.full((rows, 1), 9000.0, device=self.device))
        low = uniform((rows, 1), 0, 250, self.device)
        shape = torch.sigmoid((high - frequency) / 120) * torch.sigmoid((frequency - low) / 40)
        shape = shape * ((frequency + 200) / 1000) ** uniform((rows, 1), -0.6, 0.6, self.device)
        ripple = sum(
            uniform((rows, 1), -0.25, 0.25, self.device) * torch.cos(frequency / 8000 * math.pi * n) for n in range(1, 6)
        )
        return torch.fft.irfft(spectrum * shape * torch.exp(ripple), count)


def random_warp(rows, device):
    """Half the rows keep the plain filter bank."""
    middle = len(WARPS) // 2
    warp = torch.randint(0, len(WARPS), (rows,), device=device)
    return torch.where(torch.rand(rows, device=device) < 0.4, torch.full_like(warp, middle), warp)
