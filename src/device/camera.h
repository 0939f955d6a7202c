// device/camera.h: the device's camera: a live view, and pictures as the camera wrote them.
//
// Shape:   state() says what can be done; stateChanged() follows every change of it, trouble() says
//          why nothing can. A picture is the bytes of a JPEG file, whole.
// Takes:   take() answers exactly once, always later than the call and within 3 s: with the file
//          that the camera wrote; where none comes, with the live view's frame (no older than one
//          second before the shutter); where there is none, the stream is built anew once and its
//          first frame is taken; else an error. Frames are written as JPEG of quality 95.
// Stalls:  no frame for a second: the stream is built anew once by itself; when that does not help
//          the state is Stalled until restart() or until frames come again.
// Unplug:  NoCamera, and an unanswered take() gets its error; plugged in again, a started camera
//          starts by itself.
// End:     a camera that is taken down answers no more.
// Threads: GUI thread. Frames are turned into images and files are read on threads of its own; the
//          handler of a frame only keeps it. The GUI thread must not stand for 300 ms while the
//          camera runs: Qt 6.4 ends the stream then, and it is built anew.
// Errors:  {FileFailed, "take a picture" | "start", "camera"}, args cause: "no camera",
// "unplugged",
//          "stalled", "not ready", "stopped", or the system's own words.
#pragma once

#include <QByteArray>
#include <QImage>
#include <QObject>
#include <QString>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>

#include "base/error.h"

namespace jambline::device {

class Camera : public QObject {
  Q_OBJECT
 public:
  enum class State : std::uint8_t {
    NoCamera,  // none is plugged in
    Off,
    Starting,
    Ready,  // the shutter acts
    Taking,
    Stalled,  // the camera gives no picture: restart(), or take from files
    Failed,   // the system refuses it: trouble() says why
  };
  Q_ENUM(State)
  using Then = std::function<void(Result<QByteArray>)>;

  explicit Camera(QObject* parent = nullptr) : QObject(parent) {}

  virtual State state() const = 0;
  virtual QString camera_name() const = 0;           // as the system names it; empty: none
  virtual std::optional<Error> trouble() const = 0;  // in NoCamera, Stalled and Failed
  virtual void start() = 0;                          // when its screen comes to the front
  virtual void stop() = 0;                           // and when it leaves
  virtual void restart() = 0;                        // the stream anew, if it was started
  virtual QImage latest_frame() const = 0;           // at most 1280 px long; null when none
  virtual void take(Then then) = 0;

 signals:
  void stateChanged();
  void frameArrived();  // latest_frame() is another one; at most some 15 a second
};

// Reads the list of cameras. To be called once in main(), after the application is made and before
// QML is loaded: later it can stand for ever (Qt 6.4), and what is plugged in already is listed
// twice then and cannot be told from two. Runs the events that wait. Frames are turned into images
// without the graphics card from then on, so that other threads may do it.
void find_cameras();

// The system's camera. The folder has to be there; a picture lies in it for the moment between
// camera and memory.
std::unique_ptr<Camera> make_camera(std::filesystem::path passing_folder);

}  // namespace jambline::device
