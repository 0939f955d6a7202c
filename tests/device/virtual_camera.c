// A camera on a machine without one: a GStreamer device provider that the program's own camera code
// finds as it finds any other. Switches are files in the folder named by JAMBLINE_TEST_CAMERA:
//   unplugged  no such device; a stream that runs breaks off
//   stalled    the device stays, no frame comes any more
//   frame.i420 one raw picture of 1280 x 720 that is shown; gray without it
// The number of each frame stands in its upper left corner as 16 squares of 32 px, the highest bit
// first, white for one: a test can tell which frame it got.
#include <gst/base/gstpushsrc.h>
#include <gst/gst.h>
#include <string.h>

#define PACKAGE "jamblinetestcamera"
enum { width = 1280, height = 720, luma = width * height, frame_size = luma * 3 / 2, square = 32 };

static gboolean is_on(const char* name) {
  gchar* path = g_build_filename(g_getenv("JAMBLINE_TEST_CAMERA"), name, NULL);
  const gboolean on = g_file_test(path, G_FILE_TEST_EXISTS);
  g_free(path);
  return on;
}

static GstCaps* all_caps(void) {
  return gst_caps_from_string("video/x-raw,format=I420,width=1280,height=720,framerate=30/1");
}

// The element that gives the frames.
typedef struct {
  GstPushSrc parent;
  guint64 frame;
  gint ending;
  gchar* picture;
} Source;
typedef struct {
  GstPushSrcClass parent;
} SourceClass;
GType source_get_type(void);
G_DEFINE_TYPE(Source, source, GST_TYPE_PUSH_SRC)

static GstFlowReturn source_create(GstPushSrc* push, GstBuffer** out) {
  Source* self = (Source*)push;
  do {
    if (g_atomic_int_get(&self->ending)) return GST_FLOW_FLUSHING;
    if (is_on("unplugged")) {
      GST_ELEMENT_ERROR(push, RESOURCE, NOT_FOUND, ("The device is gone."), (NULL));
      return GST_FLOW_ERROR;
    }
    g_usleep(1000000 / 30);
  } while (is_on("stalled"));
  guint8* bytes = g_malloc(frame_size);
  if (self->picture) {
    memcpy(bytes, self->picture, frame_size);
  } else {
    memset(bytes, 96, luma);
    memset(bytes + luma, 128, frame_size - luma);
  }
  for (int bit = 0; bit < 16; ++bit)
    for (int y = 0; y < square; ++y)
      memset(bytes + y * width + bit * square, (self->frame >> (15 - bit)) & 1 ? 235 : 16, square);
  ++self->frame;
  *out = gst_buffer_new_wrapped(bytes, frame_size);
  return GST_FLOW_OK;
}

static gboolean source_start(GstBaseSrc* base) {
  Source* self = (Source*)base;
  gchar* path = g_build_filename(g_getenv("JAMBLINE_TEST_CAMERA"), "frame.i420", NULL);
  gsize size = 0;
  if (g_file_get_contents(path, &self->picture, &size, NULL) && size != frame_size)
    g_clear_pointer(&self->picture, g_free);
  g_free(path);
  return TRUE;
}

static gboolean source_stop(GstBaseSrc* base) {
  g_clear_pointer(&((Source*)base)->picture, g_free);
  return TRUE;
}

static gboolean source_unlock(GstBaseSrc* base) {
  g_atomic_int_set(&((Source*)base)->ending, TRUE);
  return TRUE;
}

static gboolean source_unlock_stop(GstBaseSrc* base) {
  g_atomic_int_set(&((Source*)base)->ending, FALSE);
  return TRUE;
}

static void source_class_init(SourceClass* klass) {
  GstCaps* caps = all_caps();
  gst_element_class_add_pad_template(
      GST_ELEMENT_CLASS(klass), gst_pad_template_new("src", GST_PAD_SRC, GST_PAD_ALWAYS, caps));
  gst_caps_unref(caps);
  gst_element_class_set_static_metadata(GST_ELEMENT_CLASS(klass), "Test camera", "Source/Video",
                                        "Frames of a test", "Jambline");
  GST_PUSH_SRC_CLASS(klass)->create = source_create;
  GST_BASE_SRC_CLASS(klass)->start = source_start;
  GST_BASE_SRC_CLASS(klass)->stop = source_stop;
  GST_BASE_SRC_CLASS(klass)->unlock = source_unlock;
  GST_BASE_SRC_CLASS(klass)->unlock_stop = source_unlock_stop;
}

static void source_init(Source* self) {
  gst_base_src_set_live(GST_BASE_SRC(self), TRUE);
  gst_base_src_set_do_timestamp(GST_BASE_SRC(self), TRUE);
  gst_base_src_set_format(GST_BASE_SRC(self), GST_FORMAT_TIME);
}

// The device that makes the element.
typedef struct {
  GstDevice parent;
} Device;
typedef struct {
  GstDeviceClass parent;
} DeviceClass;
GType device_get_type(void);
G_DEFINE_TYPE(Device, device, GST_TYPE_DEVICE)

static GstElement* device_create_element(GstDevice* device, const gchar* name) {
  (void)device;
  return g_object_new(source_get_type(), "name", name, NULL);
}

static void device_class_init(DeviceClass* klass) {
  GST_DEVICE_CLASS(klass)->create_element = device_create_element;
}

static void device_init(Device* self) {
  (void)self;
}

static GstDevice* new_device(void) {
  GstCaps* caps = all_caps();
  GstStructure* properties =
      gst_structure_new("testcamera", "is-default", G_TYPE_BOOLEAN, TRUE, NULL);
  GstDevice* device = g_object_new(device_get_type(), "display-name", "Test camera", "device-class",
                                   "Video/Source", "caps", caps, "properties", properties, NULL);
  gst_caps_unref(caps);
  gst_structure_free(properties);
  return device;
}

// The provider, which looks at the switch ten times a second.
typedef struct {
  GstDeviceProvider parent;
  GThread* watcher;
  gint ending;
  GstDevice* device;
} Provider;
typedef struct {
  GstDeviceProviderClass parent;
} ProviderClass;
GType provider_get_type(void);
G_DEFINE_TYPE(Provider, provider, GST_TYPE_DEVICE_PROVIDER)

static void look(Provider* self) {
  const gboolean unplugged = is_on("unplugged");
  if (!unplugged && !self->device) {
    self->device = new_device();
    gst_device_provider_device_add(GST_DEVICE_PROVIDER(self), gst_object_ref(self->device));
  } else if (unplugged && self->device) {
    gst_device_provider_device_remove(GST_DEVICE_PROVIDER(self), self->device);
    g_clear_pointer(&self->device, gst_object_unref);
  }
}

static gpointer watch(gpointer data) {
  Provider* self = data;
  while (!g_atomic_int_get(&self->ending)) {
    g_usleep(100000);
    look(self);
  }
  g_clear_pointer(&self->device, gst_object_unref);
  return NULL;
}

static GList* provider_probe(GstDeviceProvider* provider) {
  (void)provider;
  return is_on("unplugged") ? NULL : g_list_append(NULL, new_device());
}

static gboolean provider_start(GstDeviceProvider* provider) {
  look((Provider*)provider);
  ((Provider*)provider)->watcher = g_thread_new("test-camera", watch, provider);
  return TRUE;
}

static void provider_stop(GstDeviceProvider* provider) {
  g_atomic_int_set(&((Provider*)provider)->ending, TRUE);
  g_thread_join(((Provider*)provider)->watcher);
}

static void provider_class_init(ProviderClass* klass) {
  GST_DEVICE_PROVIDER_CLASS(klass)->probe = provider_probe;
  GST_DEVICE_PROVIDER_CLASS(klass)->start = provider_start;
  GST_DEVICE_PROVIDER_CLASS(klass)->stop = provider_stop;
  gst_device_provider_class_set_static_metadata(GST_DEVICE_PROVIDER_CLASS(klass), "Test camera",
                                                "Video/Source", "A camera of a test", "Jambline");
}

static void provider_init(Provider* self) {
  (void)self;
}

static gboolean plugin_init(GstPlugin* plugin) {
  return gst_device_provider_register(plugin, "jamblinetestcamera", GST_RANK_PRIMARY + 100,
                                      provider_get_type());
}

GST_PLUGIN_DEFINE(GST_VERSION_MAJOR, GST_VERSION_MINOR, jamblinetestcamera, "A camera of a test",
                  plugin_init, "1.0", "GPL", "jambline", "none")
