// device/knocks.h: three knocks on wood, each louder, when a time is over: heard through ear muffs.
//
// Shape:   knock_samples() draws the sound, our own: 16 bit, the same on every channel.
// make_knocks()
//          is the device's loudspeaker; answers() says whether there is one.
// Promise: under 2 s; most of it between 1 and 3 kHz. A device without a loudspeaker stays silent:
//          no sound is the only sign of anything.
// Threads: GUI thread; playing waits for nothing.
#pragma once

#include <QByteArray>
#include <memory>

namespace jambline::device {

class Knocks {
 public:
  virtual ~Knocks() = default;
  virtual bool answers() const = 0;
  virtual void knock() = 0;
};

QByteArray knock_samples(int samples_per_s, int channels);
std::unique_ptr<Knocks> make_knocks();

}  // namespace jambline::device
